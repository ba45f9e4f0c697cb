/** Share of the lever's travel that counts as full power (common practice: a hand rarely rests on the stop). */
export const FULL_POWER = 0.9;
