/** One number of a memory that is carried from step to step, with the range it never leaves. */
export interface Slot {
  readonly name: string;
  readonly low: number;
  readonly high: number;
}
