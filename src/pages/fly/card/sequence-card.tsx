import { useStore } from '../../store.ts';
import { ActionButton } from '../bar/buttons.tsx';
import { goesAhead } from '../drawing/look.ts';
import { flightCommands } from '../run/commands.ts';
import { useCardSetting } from '../scales/instruments.ts';
import { type CardLine, cardFor } from './card-data.ts';
import { CheckLines, DoneButton, Subscale } from './check-lines.tsx';
import { CoachLine, Radio } from './radio.tsx';
import { useProcedures } from './shown-procedures.ts';

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

/** The lines of the leg; where checks and calls are flown, these stand for the card's own. */
const Lines = ({ leg }: { readonly leg: string }) => {
  const ticked = useStore((s) => s.ticked);
  const setting = useCardSetting();
  const on = useProcedures((s) => s.on);
  const due = useProcedures((s) => s.check);
  const emergency = useStore((s) => s.emergency);
  // Whatever was due waits
  const check = emergency === '' || emergency === 'go-around' ? due : null;
  const card = setting ? cardFor(leg, setting) : null;
  if (!card) return <p className="soft empty">Nothing to do yet.</p>;
  const lines = on ? card.lines.filter(({ kind }) => kind === 'do') : card.lines;
  return (
    <ul className="card-lines">
      {lines.map((line) => (
        <Line key={line.id} line={line} leg={leg} ticked={ticked.has(`${leg}/${line.id}`)} />
      ))}
      {check ? <CheckLines check={check} /> : null}
    </ul>
  );
};

/** In the cockpit a check is done by heart: only how far it has come stands here. */
const ByHeart = () => {
  const check = useProcedures((s) => s.check);
  if (!check) return null;
  return (
    <p className="soft by-heart">
      {check.title} check: {check.done} of {check.items.length}
    </p>
  );
};

/** Where you are, what comes next, checks to do, calls to make, and what the coach says. */
export const SequenceCard = () => {
  const emergency = useStore((s) => s.emergency);
  const flown = useStore((s) => s.legId);
  const leg = emergency || flown;
  const picture = useStore((s) => s.settings.picture);
  const on = useProcedures((s) => s.on);
  const setting = useCardSetting();
  const soon = useStore((s) => s.next);
  const cockpit = picture === 'cockpit';
  const card = setting && !cockpit ? cardFor(leg, setting) : null;
  return (
    <section className="panel panel-card" aria-labelledby="title-card">
      <div className="panel-head">
        <h2 id="title-card">{cockpit ? 'Checks and calls' : (card?.where ?? 'Sequence')}</h2>
        {card ? (
          <span className="soft next">next: {leg === 'final' && soon !== '' ? soon : card.next}</span>
        ) : null}
        <span className="joined small">
          <ActionButton action="tick-check" label="Tick the next check">
            tick
          </ActionButton>
          <ActionButton action="make-call" label="Call: make it">
            call
          </ActionButton>
        </span>
        {on && cockpit ? <Subscale /> : null}
        <DoneButton />
      </div>
      <CoachLine />
      {goesAhead(emergency) ? null : <Radio />}
      {cockpit ? <ByHeart /> : <Lines leg={leg} />}
    </section>
  );
};
