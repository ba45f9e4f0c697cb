import type { Settings } from '../../settings.ts';

type Who = Exclude<Settings['who'], ''>;

/** What belongs to somebody who flies here: how much is said, shown and allowed. Each can be changed afterwards. */
type Suits = Pick<Settings, 'who' | 'coach' | 'tolerances' | 'picture' | 'lead'>;

const SUITS: Readonly<Record<Who, Omit<Suits, 'who'>>> = {
  'first-lessons': {
    coach: 'talked-through',
    tolerances: 'first-lessons',
    picture: 'whiteboard',
    lead: 'window',
  },
  'before-solo': {
    coach: 'reminded',
    tolerances: 'first-lessons',
    picture: 'cockpit-with-plan',
    lead: 'window',
  },
  rusty: {
    coach: 'reminded',
    tolerances: 'licence-test-faa',
    picture: 'cockpit-with-plan',
    lead: 'window',
  },
  teaching: { coach: 'silent', tolerances: 'licence-test-faa', picture: 'whiteboard', lead: 'plan' },
};

/** As the first sheet and the set-up offer them, and what each brings, in words. */
export const WHO: readonly { readonly id: Who; readonly text: string; readonly says: string }[] = [
  {
    id: 'first-lessons',
    text: 'first lessons',
    says: 'talked through, the window large, wide tolerances',
  },
  { id: 'before-solo', text: 'before solo', says: 'reminded, from the cockpit, wide tolerances' },
  { id: 'rusty', text: 'rusty', says: 'reminded, from the cockpit, licence-test tolerances' },
  { id: 'teaching', text: 'teaching', says: 'nothing said, the plan large, licence-test tolerances' },
];

/** The settings that suit somebody; none where nobody is named. */
export const suiting = (who: Settings['who']): Partial<Suits> => (who === '' ? {} : { who, ...SUITS[who] });
