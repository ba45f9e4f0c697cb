import { VIEW_NAMES, type ViewRects } from '../../../views/frame.ts';

/** Where the views lie on the canvas: the bodies of the panels that stand on the page now. */
export const viewRects = (canvas: HTMLCanvasElement): ViewRects => {
  const origin = canvas.getBoundingClientRect();
  const rects: ViewRects = {};
  for (const name of VIEW_NAMES) {
    const element = document.querySelector(`[data-view=${name}]`);
    if (!element) continue;
    const { left, top, width, height } = element.getBoundingClientRect();
    rects[name] = { x: left - origin.left, y: top - origin.top, width, height };
  }
  return rects;
};
