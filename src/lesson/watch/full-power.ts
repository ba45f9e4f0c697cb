/** Share of the lever's travel that counts as full power (common practice: a hand rarely rests on the stop). */
export const FULL_POWER = 0.9;

/** Share below which a throttle is all but closed (common practice, as observe.ts has it for the gear's warning). */
export const CLOSED_THROTTLE = 0.15;
