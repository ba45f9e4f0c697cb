import { rpmFromRevps } from '../../../units/conversions.ts';
import { meanOf } from '../../measure.ts';
import { type CircuitFacts, lastStretch } from '../../watch/facts.ts';
import { practice } from '../limit.ts';
import { around, type Rule, rule, type Sides } from '../rule.ts';
import { plain } from '../value-words.ts';

type Powered = 'downwind' | 'base' | 'final';

const askedRpm = ({ lesson }: CircuitFacts, leg: Powered): number | undefined =>
  lesson.aeroplane.plan.cardRpm?.[leg];

const BY_THE_GAUGE = {
  cardPowerRpm: { title: 'card power, rpm', ...practice(100, 100, 'what a hand sets by the gauge') },
};

const powerByCard = (leg: Powered, say: Sides, own: Pick<Rule, 'trainedBy' | 'good' | 'bad'>): Rule =>
  rule({
    id: `${leg}-rpm`,
    leg,
    name: 'power by the card',
    sides: { low: 'too little', high: 'too much' },
    measures: 'mean power once settled, against the card entered by you',
    unit: plain('rpm'),
    limits: BY_THE_GAUGE,
    say,
    ...own,
    measure: (c) => {
      const stretch = lastStretch(c, leg);
      if (stretch === null || askedRpm(c, leg) === undefined) return undefined;
      const revps = meanOf(stretch.settledRevps);
      return revps === null ? null : rpmFromRevps(revps);
    },
    against: (c, limits) =>
      around(askedRpm(c, leg) ?? rpmFromRevps(c.lesson.plan.legs[leg].steady.revps), limits.cardPowerRpm),
  });

/** Power as one's own card has it; without a card that names it there is no row. */
export const CARD_RULES: readonly Rule[] = [
  powerByCard(
    'downwind',
    {
      low: 'Less power on downwind than your card says: set it, then attitude and trim.',
      high: 'More power on downwind than your card says: set it, then attitude and trim.',
    },
    { trainedBy: 'downwind-and-checks', good: 2200, bad: 2600 },
  ),
  powerByCard(
    'base',
    {
      low: 'Less power on base than your card says: it belongs to the plan you briefed.',
      high: 'More power on base than your card says: its power first, then flap and trim.',
    },
    { trainedBy: 'base-and-final', good: 1850, bad: 2300 },
  ),
  powerByCard(
    'final',
    {
      low: 'Your card has more power on final: it was high before, or the aim point moved.',
      high: 'More power on final than your card says: low before, or dragged in.',
    },
    { trainedBy: 'final-and-landing', good: 1800, bad: 2300 },
  ),
];
