import { useEffect, useRef, useState } from 'react';
import { acrossM, alongM } from '../../aerodrome/runway.ts';
import { lightLetters, newSeenLights, seeLights } from '../../aerodrome/slope-lights.ts';
import { newSnapshot } from '../../simulation/snapshot.ts';
import { magneticFromTrue } from '../../units/angles.ts';
import { degFromRad, fpmFromMps, ftFromM, ktFromMps, radFromDeg } from '../../units/conversions.ts';
import { clockText, fixed, headingDigits, NO_VALUE, signed } from '../../units/format.ts';
import type { Stage, ViewFrame } from '../../views/frame.ts';
import { PALETTES } from '../../views/palette.ts';
import { createTrail } from '../../views/trail.ts';
import { lookForLeg } from '../fly/drawing/look.ts';
import { fetchPart, PartMissing } from '../parts/fetch-part.ts';
import { lightsInWords } from '../shown/lights-in-words.ts';
import { useStore } from '../store.ts';
import { type Cursor, useCursor } from './cursor.ts';
import { type Replayed, sampleAt } from './replayed.ts';

interface AtCursorProps {
  readonly replayed: Replayed;
  readonly cursor: Cursor;
}

/** Slope lights take the foot of the canvas. */
const LIGHTS_PX = 52;

const frameFor = (replayed: Replayed): ViewFrame => {
  const { model, plan } = replayed;
  const { aeroplane, aerodrome, weather } = model.scenario;
  return {
    snapshot: newSnapshot(),
    plan,
    runway: model.runway,
    aerodrome,
    aeroplane,
    lights: model.runway.lights ? newSeenLights() : null,
    leg: 'final',
    trail: createTrail(),
    forecast: [],
    lookRad: 0,
    picture: 'cockpit',
    wind: { fromDegM: weather.windFromDegM, kt: weather.windKt, gustKt: weather.gustKt },
    planMode: 'runway-up',
    ghost: null,
    gates: [],
  };
};

const lookRadAt = (replayed: Replayed, frame: ViewFrame): number => {
  const { runway } = replayed.model;
  const { eastM, northM } = frame.snapshot;
  const behindRad = Math.atan2(-alongM(runway, eastM, northM), Math.abs(acrossM(runway, eastM, northM)));
  return radFromDeg(lookForLeg(frame.leg, replayed.plan.side, behindRad));
};

/** The window and the slope lights at the cursor, drawn by the same hand as in flight. */
const Window = ({ replayed, cursor }: AtCursorProps) => {
  const canvas = useRef<HTMLCanvasElement>(null);
  const theme = useStore((s) => s.theme);
  const [why, setWhy] = useState('');
  useEffect(() => {
    const element = canvas.current;
    if (!element) return;
    const frame = frameFor(replayed);
    let stage: Stage | null = null;
    let gone = false;
    let waiting = 0;
    const draw = () => {
      waiting = 0;
      if (!stage || stage.lost) return;
      const shown = replayed.at(cursor.now(), frame.snapshot);
      frame.leg = sampleAt(replayed, cursor.now()).leg;
      frame.lookRad = lookRadAt(replayed, frame);
      if (frame.lights)
        seeLights(
          replayed.model.runway,
          shown.eyeEastM,
          shown.eyeNorthM,
          shown.eyeHeightM,
          frame.lights as never,
        );
      stage.draw(frame);
    };
    const ask = () => {
      waiting ||= requestAnimationFrame(draw);
    };
    const layout = () => {
      const { clientWidth: width, clientHeight: height } = element;
      stage?.layout({
        window: { x: 0, y: 0, width, height: height - LIGHTS_PX },
        lights: { x: 0, y: height - LIGHTS_PX, width, height: LIGHTS_PX },
      });
      ask();
    };
    const load = async () => {
      const { createStage } = await fetchPart('views/stage.ts', () => import('../../views/stage.ts'));
      const made = await createStage(element, PALETTES[theme], { stillCameras: true, onRestored: layout });
      if (gone) {
        made.destroy();
        return;
      }
      stage = made;
      layout();
      // Once more after its typeface has come.
      document.fonts?.ready.then(ask);
    };
    load().catch((error: unknown) =>
      setWhy(
        error instanceof PartMissing
          ? 'The drawing did not load, so the window stays empty; everything else is there.'
          : 'The window could not be drawn and stays empty; everything else is there.',
      ),
    );
    const resized = new ResizeObserver(layout);
    resized.observe(element);
    const unsubscribe = cursor.subscribe(ask);
    return () => {
      gone = true;
      cancelAnimationFrame(waiting);
      resized.disconnect();
      unsubscribe();
      stage?.destroy();
    };
  }, [replayed, cursor, theme]);
  return why ? <p className="soft">{why}</p> : <canvas key={theme} ref={canvas} className="cursor-canvas" />;
};

const lightsScratch = newSeenLights();

const factsAt = (replayed: Replayed, timeS: number): readonly (readonly [string, string])[] => {
  const s = replayed.at(timeS, replayed.scratch);
  const { runway } = replayed.model;
  const sample = sampleAt(replayed, timeS);
  const lights = runway.lights
    ? lightsInWords(lightLetters(seeLights(runway, s.eyeEastM, s.eyeNorthM, s.eyeHeightM, lightsScratch)))
    : 'none';
  return [
    ['leg', sample.leg.replaceAll('-', ' ')],
    ['altitude', `${fixed(ftFromM(s.altitudeM))} ft`],
    ['airspeed', `${fixed(ktFromMps(s.shownIasMps))} kt`],
    ['climb', `${signed(Math.round(fpmFromMps(s.verticalSpeedMps) / 10) * 10)} ft/min`],
    ['heading', `${headingDigits(degFromRad(magneticFromTrue(s.headingRadT, runway.variationRad)))}°`],
    ['off the slope', Number.isNaN(sample.slopeOffDeg) ? NO_VALUE : `${signed(sample.slopeOffDeg, 1)}°`],
    ['lights', lights],
  ];
};

/** What the pilot saw and read at the cursor. */
export const AtCursor = ({ replayed, cursor }: AtCursorProps) => {
  const timeS = useCursor(cursor);
  return (
    <section className="debrief-box at-cursor" aria-labelledby="title-at-cursor">
      <div className="debrief-head-row">
        <h2 id="title-at-cursor">At {clockText(timeS)}</h2>
      </div>
      <Window replayed={replayed} cursor={cursor} />
      <dl>
        {factsAt(replayed, timeS).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
};
