/** In files of version 1 and attempts kept by then the circuit stood in the id from the second on: `downwind-height-2`. */
const WITH_CIRCUIT = /^(.*[a-z]|gate-\d+)-(\d+)$/;

/** A judged item as it is kept today: the row's own id, and its circuit beside it. One that has its circuit stays as it is. */
export const withCircuit = <T extends { readonly id: string; readonly circuit?: number | undefined }>(
  item: T,
): T & { readonly circuit: number } => {
  const { id, circuit } = item;
  if (circuit !== undefined) return { ...item, circuit };
  const found = WITH_CIRCUIT.exec(id);
  // A gate's height is no circuit
  if (found === null || found[1] === 'gate') return { ...item, circuit: 1 };
  return { ...item, id: found[1] as string, circuit: Number(found[2]) };
};
