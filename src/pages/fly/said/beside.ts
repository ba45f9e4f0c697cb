/** Checks, calls and coach as the page shows them: fetched together, once the flight stands. */

export { openCall, sayOption, showProcedures, turnSubscale } from '../card/procedures.ts';
export { coachFlight } from './coach.ts';
export { showInstruction } from './instruction.ts';
