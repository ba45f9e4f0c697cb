import { plainMeter } from './common.ts';

const WARNING = -1;

/** Where the wheels are, and the warning that is also heard. */
export const gear = plainMeter({
  id: 'gear',
  name: 'Gear',
  unit: '',
  inCockpit: true,
  aboard: ({ aeroplane }) => aeroplane.undercarriage.retractable,
  value: (snapshot) => (snapshot.gearWarning ? WARNING : snapshot.gear),
  text: (place) => {
    if (place === WARNING) return 'not down: warning';
    return place === 1 ? 'down, locked' : place === 0 ? 'up' : 'moving';
  },
});
