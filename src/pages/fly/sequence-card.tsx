import { useStore } from '../store.ts';
import { ActionButton } from './buttons.tsx';
import { type CardLine, cardFor } from './card-data.ts';
import { flightCommands } from './commands.ts';
import { useCardSetting } from './instruments.ts';

const Line = ({
  line,
  leg,
  ticked,
}: {
  readonly line: CardLine;
  readonly leg: string;
  readonly ticked: boolean;
}) => {
  if (line.kind === 'do') return <li className="card-do">{line.text}</li>;
  const id = `${leg}/${line.id}`;
  return (
    <li className={`card-${line.kind}`}>
      <label>
        <input type="checkbox" checked={ticked} onChange={() => flightCommands()?.tick(id)} />
        <span>
          {line.kind === 'call' ? <em>say </em> : null}
          {line.text}
        </span>
      </label>
    </li>
  );
};

/** Where you are, what comes next, checks to tick, calls to make. */
export const SequenceCard = () => {
  const leg = useStore((s) => s.legId);
  const ticked = useStore((s) => s.ticked);
  const setting = useCardSetting();
  const card = setting ? cardFor(leg, setting) : null;
  return (
    <section className="panel panel-card" aria-labelledby="title-card">
      <div className="panel-head">
        <h2 id="title-card">{card?.where ?? 'Sequence'}</h2>
        {card ? <span className="soft next">next: {card.next}</span> : null}
        {card ? (
          <span className="joined small">
            <ActionButton action="tick-check" label="Tick the next check">
              tick
            </ActionButton>
            <ActionButton action="make-call" label="Call: make it">
              call
            </ActionButton>
          </span>
        ) : null}
      </div>
      {card ? (
        <ul className="card-lines">
          {card.lines.map((line) => (
            <Line key={line.id} line={line} leg={leg} ticked={ticked.has(`${leg}/${line.id}`)} />
          ))}
        </ul>
      ) : (
        <p className="soft empty">Nothing to do yet.</p>
      )}
    </section>
  );
};
