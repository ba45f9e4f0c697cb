/** The one generator of `seedrandom` that is used, imported alone; its published types cover only the whole. */
declare module 'seedrandom/lib/alea.js' {
  interface AleaState {
    readonly s0: number;
    readonly s1: number;
    readonly s2: number;
    readonly c: number;
  }
  interface Alea {
    (): number;
    state(): AleaState;
  }
  export default function alea(seed: string, options?: { readonly state: true }): Alea;
}
