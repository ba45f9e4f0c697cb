import { clockText } from '../../units/format.ts';
import type { HelpUsed } from './attempt.ts';

const times = (count: number, one: string): string[] =>
  count === 0 ? [] : [count === 1 ? `${one} once` : `${one} ${count} times`];

const said = (word: string): string => word.replaceAll('-', ' ');

/** How much help there was, in one line: "whiteboard · coach reminded · hand holds · looked at the plan 2 times". */
export const helpWords = (help: HelpUsed): string =>
  [
    said(help.picture),
    `coach ${said(help.coach)}`,
    help.handHolds ? 'hand holds' : 'stick',
    ...(help.rudderAssist ? ['rudder assist'] : []),
    ...times(help.freezes, 'frozen'),
    ...times(help.stepsBack, 'stepped back'),
    ...times(help.planLooks, 'looked at the plan'),
    ...(help.watchedS > 0 ? [`the model pilot flew ${clockText(help.watchedS)} of it`] : []),
  ].join(' · ');
