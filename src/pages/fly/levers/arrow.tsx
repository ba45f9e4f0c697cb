const TURNS = { up: 0, right: 90, down: 180, left: 270 } as const;

/** An arrow that needs no font. */
export const Arrow = ({ to }: { readonly to: keyof typeof TURNS }) => (
  <svg className="arrow" viewBox="0 0 16 16" aria-hidden="true">
    <path d="M8 2 V14 M3.5 6.5 L8 2 L12.5 6.5" transform={`rotate(${TURNS[to]} 8 8)`} />
  </svg>
);
