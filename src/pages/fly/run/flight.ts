import { ownAircraft } from '../../../flight/flight.ts';
import { keyCap, keysOf } from '../../../input/actions.ts';
import { watchGamepads } from '../../../input/gamepad.ts';
import { createHands } from '../../../input/hands.ts';
import { listenToKeys } from '../../../input/keyboard.ts';
import type { ControlSource } from '../../../session/source.ts';
import { prepare } from '../../../simulation/model.ts';
import { STEP_HZ } from '../../../simulation/scenario.ts';
import { createFlightSound } from '../../../sound/flight-sound.ts';
import { clockText } from '../../../units/format.ts';
import { PALETTES } from '../../../views/palette.ts';
import { chosenFlight } from '../../chosen-flight.ts';
import { type HandOver, takeHandOver } from '../../hand-over.ts';
import { alreadyTold } from '../../parts/fetch-part.ts';
import { changeSettings, useStore } from '../../store.ts';
import { headlineOf } from '../bar/headline.ts';
import { NOTHING, useProcedures } from '../card/shown-procedures.ts';
import { createDrawing } from '../drawing/drawing.ts';
import { createScreenLevers } from '../levers/screen-levers.ts';
import { createAnnouncer } from '../said/announcer.ts';
import { setInstruments } from '../scales/instruments.ts';
import { instrumentsOf } from '../scales/instruments-of.ts';
import { meters } from '../scales/meters.ts';
import { actionsOf } from './action-table.ts';
import type { Rate } from './clock.ts';
import { registerFlight } from './commands.ts';
import { createDriver, type Driver } from './driver.ts';
import { type BegunElsewhere, logOf } from './flight-log.ts';
import { askedBy, keepFlight, keptFlight } from './kept-flight.ts';
import { whenLeft } from './leaving.ts';
import { marksOf } from './marks-of.ts';
import { loadPilots, pilotsNow } from './pilots.ts';
import { type ReadyFlight, readyFlight, readyFrom } from './ready.ts';
import { loadResults, resultsNow } from './results.ts';
import { createShower } from './shower.ts';
import { tellShown } from './telling.ts';
import { offerUnfinished, takeUpUnfinished } from './unfinished.ts';

const sentence = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Shorter losses are added up before they are said. */
const SAY_DROPPED_S = 0.5;

/**
 * The flying page's engine room: owns keys, gamepad, session, clock, drawing and sound, and is the only place
 * where they meet. Begins at once with the flight that the settings ask for; returns the way to end it.
 */
export const beginFlight = (canvas: HTMLCanvasElement): (() => void) => {
  const set = useStore.setState;
  const get = useStore.getState;
  let flight: ReadyFlight | null = null;
  let driver: Driver | null = null;
  let asked = '';
  let handed: HandOver | null = null;
  let frames = 0;
  let droppedS = 0;

  const announcer = createAnnouncer(
    (spoken) => set({ spoken }),
    () => performance.now(),
  );
  const drawing = createDrawing(canvas, {
    onLost: () => freeze('The drawing was lost; it comes back by itself.'),
  });
  const sound = createFlightSound();

  // --- time ---
  const freeze = (why = '') => {
    if (!driver) return;
    driver.freeze();
    sound.hush();
    if (flight) logOf(flight).froze(why === '');
    set({ frozen: true, frozenWhy: why });
    drawing.wake();
    announcer.say(why ? `Frozen. ${why}` : 'Frozen.');
  };
  const goOn = () => {
    if (!driver || driver.ended || get().sheet) return;
    driver.start(performance.now());
    set({ begun: true, frozen: false, frozenWhy: '', notice: '' });
  };
  const rate = (to: Rate) => {
    driver?.setRate(to);
    set({ rate: to });
  };

  // --- hands ---
  const keyboard = listenToKeys(
    window,
    (action, down) => actions[action]?.(down),
    () => get().sheet === null,
    () => get().settings.arrowsAsStick,
  );
  const gamepads = watchGamepads(
    // Some browsers have none where the page is not served securely
    () => navigator.getGamepads?.() ?? [],
    (action) => actions[action]?.(true),
    (connected) => {
      set({ gamepad: connected, notice: connected ? 'A game controller is in your hands.' : '' });
      if (!connected && driver?.running) freeze('The game controller is gone; the flight waits for it.');
    },
  );
  const levers = createScreenLevers();
  const hands = (): ControlSource<unknown> =>
    createHands(
      [keyboard, gamepads, levers],
      (flight as ReadyFlight).scenario.aeroplane,
      get().settings.handStyle,
    ) as ControlSource<unknown>;
  const sourceNow = (): ControlSource<unknown> =>
    (get().pilot === 'model' && flight ? pilotsNow()?.modelPilot(flight.model, flight.plan) : null) ??
    hands();

  const takeOver = () => {
    if (!driver) return;
    keyboard.release();
    driver.giveTo(hands());
    set({ pilot: 'hands', notice: 'You have control.' });
    announcer.say('You have control.');
  };
  const watch = async () => {
    const pilots = await loadPilots().catch(alreadyTold);
    if (!pilots || !driver || !flight) return;
    const { modelPilot, pilotRefusal } = pilots;
    const refused = pilotRefusal(flight.model, flight.plan);
    if (refused) {
      set({ notice: refused });
      announcer.say(refused);
      return;
    }
    driver.giveTo(modelPilot(flight.model, flight.plan));
    set({
      pilot: 'model',
      notice: `The model pilot has control; ${keyCap(keysOf('take-over')[0] ?? '')} takes over.`,
    });
    announcer.say('The model pilot has control.');
  };

  // --- the flight ---
  const adopt = (next: ReadyFlight, begun: BegunElsewhere = {}) => {
    const flownBefore = flight !== null && flight !== next && flight.session.step > 0;
    if (flight && flight !== next) logOf(flight).dropped();
    flight = next;
    const log = logOf(next, begun);
    driver = createDriver(next, keyboard, {
      onDropped: (seconds) => {
        droppedS += seconds;
        if (droppedS < SAY_DROPPED_S) return;
        set({ notice: `The machine was busy: ${droppedS.toFixed(1)} s of flight were skipped.` });
        droppedS = 0;
      },
      isPractised: () => resultsNow()?.isPractised(next) ?? false,
      onEnded: () => {
        sound.hush();
        set({ frozen: true, frozenWhy: '' });
        const kept = log.ended();
        const show = ({ cardOf }: Awaited<ReturnType<typeof loadResults>>) => {
          if (flight === next && driver?.ended) set({ result: cardOf(next, log.help()), sheet: 'result' });
        };
        // Without what judges it, the result is shown once the log has got it
        loadResults().then(show, () => kept.then(loadResults).then(show, alreadyTold));
      },
    });
    // A new flight begins at the normal rate, whatever the last one was watched at
    if (flownBefore) set({ rate: 1 });
    driver.setRate(get().rate);
    const { scenario, model } = next;
    setInstruments(instrumentsOf(next));
    drawing.show(next);
    meters.refresh();
    keyboard.release();
    set({
      // The sheet of the flight before has nothing to say of this one, and would keep the keys from it
      sheet: get().sheet === 'result' ? null : get().sheet,
      ready: true,
      failed: '',
      begun: next.session.step > 0,
      frozen: true,
      frozenWhy: '',
      pilot: 'hands',
      ticked: new Set(),
      result: null,
      attempt: '',
      planLooks: 0,
      stepsBack: 0,
      look: 'leg',
      legId: '',
      emergency: '',
      marks: [],
      notice: '',
      instruction: '',
      headline: headlineOf(scenario, model.runway.circuitSide),
    });
    // What was said last was said of another flight
    useProcedures.setState(NOTHING);
  };
  const prepareFlight = (): boolean => {
    try {
      const { scenario, model } = chosenFlight(get().settings);
      asked = askedBy(get().settings);
      handed = null;
      adopt(
        readyFlight(
          scenario,
          () =>
            createHands([keyboard, gamepads, levers], scenario.aeroplane, get().settings.handStyle) as never,
          model,
        ),
      );
      return true;
    } catch (error) {
      // A flight that is already there goes on; only without one is the page empty.
      set(flight ? { notice: sentence(error) } : { failed: sentence(error) });
      return false;
    }
  };
  /** A flight from another page, or from a tab that was closed. */
  const adoptHanded = (from: HandOver): boolean => {
    const scenario = from.kind === 'anew' ? from.scenario : from.recording.scenario;
    try {
      const model = prepare(scenario);
      const source = createHands(
        [keyboard, gamepads, levers],
        scenario.aeroplane,
        get().settings.handStyle,
      ) as never;
      asked = askedBy(get().settings);
      handed = from;
      adopt(
        from.kind === 'anew'
          ? readyFlight(scenario, () => source, model)
          : readyFrom(from.recording, from.atStep, source, model),
        from.kind === 'anew' ? {} : from,
      );
      return true;
    } catch (error) {
      set(flight ? { notice: sentence(error) } : { failed: sentence(error) });
      return false;
    }
  };
  const takeUp = async (id: string) => {
    const from = await takeUpUnfinished(id, (before) =>
      flight
        ? { help: logOf(flight).help(), marks: marksOf(ownAircraft(flight).recorder.recording) }
        : before,
    );
    set({ sheet: null, unfinished: [] });
    changeSettings({ seenStart: true });
    if (from) adoptHanded(from);
    else set({ notice: 'Another tab has that flight by now, or it is gone.' });
  };
  const goTo = (step: number, why: string) => {
    if (!driver || !flight) return;
    if (driver.ended) logOf(flight).branches(step / STEP_HZ);
    keyboard.release();
    driver.goTo(step, sourceNow());
    meters.refresh();
    drawing.jump();
    sound.hush();
    set({ frozen: true, frozenWhy: why, result: null, attempt: '' });
    announcer.say(why);
  };
  const stepBack = () => {
    if (!flight) return;
    const at = Math.max(0, flight.session.step - 10 * STEP_HZ);
    set((s) => ({ stepsBack: s.stepsBack + 1 }));
    goTo(at, `Back at ${clockText(at / STEP_HZ)}.`);
  };

  /** Handed over before it has begun, it begins; otherwise it goes on or stands as it did. */
  const watchOn = async () => {
    await watch();
    if (!get().begun) goOn();
  };

  const actions = actionsOf({
    freeze: () => (get().frozen ? goOn() : freeze()),
    rate,
    stepBack,
    takeOver: () => (get().pilot === 'model' ? takeOver() : void watchOn()),
    lookingDeg: () => drawing.lookingDeg(),
  });
  registerFlight({
    act: (action, down, atMs) => keyboard.strike(action, down, atMs),
    moveLever: (lever, to) => levers.move(lever, to),
    setFlapStage: (stage) => levers.setFlapStage(stage),
    holdStick: (at) => levers.holdStick(at),
    prepare: prepareFlight,
    again: () =>
      handed === null || handed.kind === 'taken-up'
        ? prepareFlight()
        : adoptHanded({
            kind: 'anew',
            scenario: handed.kind === 'anew' ? handed.scenario : handed.recording.scenario,
          }),
    takeUp: (id) => void takeUp(id),
    watch: () => {
      void watch().then(goOn);
    },
    start: goOn,
    cover: (covered) => {
      if (covered && driver?.running) freeze();
      keyboard.release();
    },
    tick: (check) =>
      set((s) => {
        const ticked = new Set(s.ticked);
        if (!ticked.delete(check)) ticked.add(check);
        return { ticked };
      }),
    fromInstant: (timeS) => {
      set({ sheet: null, pilot: 'hands' });
      goTo(Math.round(timeS * STEP_HZ), `Again from ${clockText(timeS)}.`);
    },
    keepShown: () => {
      if (flight) logOf(flight).keepShown().catch(alreadyTold);
    },
    finish: () => driver?.finish(),
    shown: () => flight,
    work: (item) => tellShown('tick', item),
    setSound: (on) => {
      sound.set(on);
      set({ sound: on });
    },
  });

  const show = createShower(announcer, drawing, sound);
  const frame = (nowMs: number) => {
    frames = requestAnimationFrame(frame);
    gamepads.poll();
    if (!flight || !driver) return;
    show(flight, driver, nowMs);
    logOf(flight).note();
  };

  const stopWatching = whenLeft(
    () => driver?.running ?? false,
    () => keyboard.anyDown(),
    (why) => freeze(why),
    () => keyboard.release(),
  );
  const unsubscribe = useStore.subscribe((now, before) => {
    if (now.theme !== before.theme) drawing.setPalette(PALETTES[now.theme]);
    if (now.settings.handStyle !== before.settings.handStyle && now.pilot === 'hands')
      driver?.giveTo(hands());
    if (now.sheet !== before.sheet && now.sheet === 'help' && driver?.running) freeze();
  });

  const laidReady = takeHandOver();
  const kept = keptFlight(get().settings);
  if (laidReady || !kept) set({ rate: 1 });
  if (laidReady) {
    // Whoever comes from another page has read what the first sheet says.
    if (get().sheet === 'start') set({ sheet: null });
    adoptHanded(laidReady);
  } else if (kept) {
    asked = askedBy(get().settings);
    adopt(kept);
    takeOver();
  } else {
    prepareFlight();
  }
  frames = requestAnimationFrame(frame);
  offerUnfinished().catch(alreadyTold);

  return () => {
    cancelAnimationFrame(frames);
    if (flight) logOf(flight).left();
    keepFlight(flight, asked);
    unsubscribe();
    stopWatching();
    keyboard.destroy();
    announcer.destroy();
    drawing.destroy();
    sound.destroy();
    registerFlight(null);
    setInstruments(null);
  };
};
