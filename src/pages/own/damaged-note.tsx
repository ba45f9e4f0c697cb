import { saveFile } from '../shown/save-file.ts';
import { type Damaged, forgetDamaged, useDamaged } from './damaged.ts';

const save = ({ text }: Damaged): void =>
  saveFile('lapwing-damaged.txt', new Blob([text], { type: 'text/plain' }));

/** What was kept and cannot be read: said, to be saved, and gone only when the user says so. */
export const DamagedNote = () => {
  const { all } = useDamaged();
  if (all.length === 0) return null;
  return (
    <section className="own-damaged" aria-labelledby="own-damaged">
      <h2 id="own-damaged">Set aside</h2>
      <p>
        {all.length === 1 ? 'Something that was kept' : `${all.length} things that were kept`} in this browser
        could not be read and {all.length === 1 ? 'was' : 'were'} set aside unchanged. Save the text if you
        want to mend it; delete it when you are done.
      </p>
      <ul>
        {all.map((each, i) => (
          <li key={each.key}>
            <span className="own-damaged-why">{each.why}</span>
            <span className="own-buttons">
              <button type="button" onClick={() => save(each)}>
                save the text
                <span className="only-heard"> {i + 1}</span>
              </button>
              <button type="button" onClick={() => forgetDamaged(each.key)}>
                delete it
                <span className="only-heard"> {i + 1}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
};
