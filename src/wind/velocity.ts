/** Places of the velocity of the air in a work array: where it blows TO. */
export const WIND = { east: 0, north: 1, up: 2 } as const; // definition: places
export const WIND_LENGTH = 3; // definition: a count
