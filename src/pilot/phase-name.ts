/** What the pilot is doing; the turn onto a leg belongs to the leg. */
export type PhaseName =
  | 'take-off'
  | 'upwind'
  | 'crosswind'
  | 'downwind'
  | 'base'
  | 'final'
  | 'round-out'
  | 'landing-roll'
  | 'go-around'
  | 'extended'
  | 'orbit'
  | 'glide'
  | 'slip'
  | 'land-ahead';
