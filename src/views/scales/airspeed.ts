import type { Aeroplane } from '../../aeroplane/schema.ts';
import { stallIasMps } from '../../simulation/performance/stall-speed.ts';
import { shapeOf } from '../../simulation/shape.ts';
import { ktFromMps } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import { mark, ribbonScale, ticksEvery } from './common.ts';

const LOW_KT = 20;
const STEP_KT = 20;

/** Indicated stalling speed at maximum mass with a flap stage, as the arcs are painted for. */
export const arcStallKt = (aeroplane: Aeroplane, stage: number): number =>
  ktFromMps(stallIasMps(shapeOf(aeroplane, aeroplane.massKg.maximum), stage));

const lastStage = (aeroplane: Aeroplane): number => aeroplane.flap.stages.length - 1;

/** Lowest limit of any stage that is out: the top of the white arc. */
export const flapLimitKt = (aeroplane: Aeroplane): number =>
  Math.min(...aeroplane.flap.stages.filter((stage) => stage.deg > 0).map((stage) => stage.limitKt));

/**
 * Airspeed with its standard arcs (FAA-H-8083-25, airspeed indicator markings): white from the stall with landing
 * flap to the flap limit, green from the clean stall to Vno, yellow from there to Vne, red line at Vne; stalling
 * speeds at maximum mass.
 */
export const airspeed = ribbonScale({
  id: 'airspeed',
  name: 'Airspeed',
  unit: 'kt',
  low: () => LOW_KT,
  high: ({ aeroplane }) => Math.ceil((aeroplane.limits.vneKt * 1.05) / 10) * 10,
  arcs: ({ aeroplane }) => {
    const { vnoKt, vneKt } = aeroplane.limits;
    return [
      {
        from: arcStallKt(aeroplane, lastStage(aeroplane)),
        to: flapLimitKt(aeroplane),
        colour: 'arcWhite',
        row: 'upper',
        means: 'white arc: flap operating range',
      },
      {
        from: arcStallKt(aeroplane, 0),
        to: vnoKt,
        colour: 'arcGreen',
        row: 'lower',
        means: 'green arc: normal operating range',
      },
      { from: vnoKt, to: vneKt, colour: 'arcYellow', row: 'lower', means: 'yellow arc: smooth air only' },
    ];
  },
  ticks: ({ aeroplane }) => ticksEvery(2 * LOW_KT, aeroplane.limits.vneKt, STEP_KT, (kt) => fixed(kt)),
  marks: ({ aeroplane }) => [mark(aeroplane.limits.vneKt, 'arcRed', 'red line: never exceed')],
  value: (snapshot) => ktFromMps(snapshot.shownIasMps),
  text: (kt) => `${fixed(kt)} kt`,
});
