import { useStore } from '../store.ts';

/** Reloads the page; the buttons say what is kept. */
export const reload = (): void => location.reload();

/** What is wrong with the browser's storage matters before anybody reloads. */
export const StorageWarning = () => {
  const says = useStore((s) => s.storageSays);
  return says ? <p className="failed-warning">{says}</p> : null;
};

/** Something that was asked for by the way did not come: at the foot of the page, or of the sheet that lies over it. */
export const Missing = () => {
  const missing = useStore((s) => s.missing);
  if (missing === null) return null;
  const { says, reload: only, again } = missing;
  const away = () => useStore.setState({ missing: null });
  return (
    <div className="missing" role="alert">
      <p>{says}</p>
      <StorageWarning />
      <p className="failed-doors">
        {again === null ? null : (
          <button
            type="button"
            className="strong"
            onClick={() => {
              away();
              again();
            }}
          >
            try again
          </button>
        )}
        {only ? (
          <button type="button" className="strong" onClick={reload}>
            reload the page
          </button>
        ) : null}
        <button type="button" onClick={away}>
          put away
        </button>
      </p>
    </div>
  );
};
