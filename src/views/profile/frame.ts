/** Where things stand in the profile's panel, pixels. */
/** The title's strip, and below it the row of leg names. */
export const TITLE_PX = 26;
export const TOP_PX = 48;
export const BOTTOM_PX = 26;
export const LEFT_PX = 14;
/** Room for heights and gates. */
export const RIGHT_PX = 52;
export const AEROPLANE_PX = 46;
