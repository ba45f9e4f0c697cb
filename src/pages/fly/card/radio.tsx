import { keyCap, keysOf } from '../../../input/actions.ts';
import { useStore } from '../../store.ts';
import { KeyCap } from '../levers/key-cap.tsx';
import { press } from '../run/commands.ts';
import { useProcedures } from './shown-procedures.ts';

const ACTIONS = ['say-1', 'say-2', 'say-3'] as const;

/** What the tower said, and the wordings to choose from: by key or by finger. */
export const Radio = () => {
  const heard = useProcedures((s) => s.heard);
  const spoken = useProcedures((s) => s.spoken);
  const prompt = useProcedures((s) => s.prompt);
  const correction = useProcedures((s) => s.correction);
  const frozen = useStore((s) => s.frozen);
  // Who only watches has no call to choose
  const watching = useStore((s) => s.pilot === 'model');
  // Names of keys are written anew when keys change
  useStore((s) => s.settings.keys);
  const asked = watching ? null : prompt;
  if (!heard && !spoken && !asked && !correction) return null;
  return (
    <div className="radio">
      {heard ? <p className="radio-heard">{heard}</p> : null}
      {spoken ? <p className="radio-spoken">“{spoken}”</p> : null}
      {correction ? <p className="radio-correction">{correction}</p> : null}
      {asked ? (
        <fieldset className="radio-options" aria-label={asked.title}>
          {asked.options.map((option, i) => {
            const action = ACTIONS[i] ?? 'say-1';
            const key = keysOf(action)[0] ?? '';
            return (
              <button
                key={option.text}
                type="button"
                disabled={frozen}
                aria-keyshortcuts={keyCap(key)}
                onClick={() => press(action)}
              >
                <KeyCap name={key} /> {option.text}
              </button>
            );
          })}
        </fieldset>
      ) : null}
    </div>
  );
};

/** What the coach says now. */
export const CoachLine = () => {
  const coach = useProcedures((s) => s.coach);
  return coach ? <p className="coach-line">{coach}</p> : null;
};
