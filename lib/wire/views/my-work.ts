/** My work as the server says it: what one person is at, what comes next, and the job that is opened, whole. */
import type { Instant } from '@/lib/domain/base/vocabulary';
import type { Tool } from '@/lib/domain/torque/tool';
import type { BodyRow, DueMark, PersonTag, RowSign, RowView } from './car';
import type { Desk } from './desk';
import type { RefusalLine } from './said-line';

export interface MyWorkView {
  /** `Wednesday 25 November. 3 jobs are ready for you.` */
  readonly says: string;
  readonly clocks: readonly RunningClockView[];
  /** At work today, in minutes, up to now. */
  readonly minutesToday: number;
  readonly opened: OpenedJob | null;
  /** The address named a job that is settled by now, or another's. */
  readonly isSettled: boolean;
  readonly lists: readonly WorkList[];
  /** How many joints wait for this person's eyes. */
  readonly eyes: number;
  /** Questions that wait for a lead; empty for everybody else. */
  readonly asks: readonly AskedLine[];
}

export interface RunningClockView {
  readonly name: string;
  readonly chassis: string;
  readonly since: Instant;
  /** `14:05`, `Tue 24 Nov 14:05`. */
  readonly sinceText: string;
  readonly href: string;
}

export interface WorkList {
  readonly id: 'mine' | 'next' | 'waiting' | 'anybody';
  readonly title: string;
  readonly says: string;
  readonly lines: readonly WorkLine[];
}

export interface CarMark {
  readonly id: string;
  readonly chassis: string;
  readonly colour: string | null;
}

export interface WorkLine {
  readonly id: string;
  readonly href: string;
  readonly car: CarMark;
  readonly sign: RowSign;
  readonly name: string;
  /** `paused; left as: two of four in`, `may begin`. */
  readonly says: string;
  /** Why it is in this list: `given to you`, `your stage`. */
  readonly why: string;
  /** `1 h 20 min`; empty where the plan names none. */
  readonly planned: string;
  readonly due: DueMark;
  readonly waits: readonly RefusalLine[];
  /** What its kit lacks though it is ready, and when that comes; empty where nothing is missing (D59). */
  readonly lacks: string;
  readonly isOpened: boolean;
}

export interface OpenedJob {
  readonly id: string;
  readonly car: CarMark & { readonly loose: number; readonly crew: readonly PersonTag[] };
  /** `Operation ST-070 in Steering`. */
  readonly kind: string;
  readonly name: string;
  readonly state: 'ready' | 'waiting' | 'running' | 'paused';
  readonly meta: readonly string[];
  readonly leftAs: string | null;
  /** Whatever can be done about it, as on the car's page. */
  readonly row: RowView;
  readonly desk: Desk;
  readonly places: Readonly<Record<string, readonly string[]>>;
  readonly version: number;
  readonly again: Instant | null;
  /** The operation that questions are about; null where it is another job. */
  readonly asksAbout: string | null;
  readonly cautions: readonly { readonly hazard: string; readonly text: string }[];
  readonly steps: readonly string[];
  readonly body: readonly (BodyRow & { readonly torque: TorqueLine | null })[];
  readonly hardware: readonly KitLine[];
  /** Where its kit is picked; null where the job takes none. */
  readonly kitHref: string | null;
  /** As in a line: what its kit lacks though it is ready. */
  readonly lacks: string;
  readonly tools: readonly ToolLine[];
  readonly asks: readonly AskedLine[];
}

/** The number that goes on the tool, and what the fastener is meant to get. */
export interface TorqueLine {
  readonly tool: string;
  readonly kind: Tool['kind'];
  readonly adapter: string | null;
  /** Exact, in the tool's unit. */
  readonly setting: string;
  readonly unit: string;
  readonly target: string;
  /** The window, exact, for how many places it is shown with. */
  readonly low: string | null;
  readonly high: string | null;
}

export interface KitLine {
  readonly item: string;
  readonly name: string;
  /** `4`, `a dab`. */
  readonly quantity: string;
  /** `used once, spent at final torque`. */
  readonly rule: string;
  readonly isOnce: boolean;
  /** How much of it is in the car already; empty where none is. */
  readonly fitted: string;
  /** Where it lies; null = nobody has said. */
  readonly bin: string | null;
  /** The lot to take, where there are lots. */
  readonly lot: string | null;
  /** `4 in the kit`; empty where none is picked. */
  readonly picked: string;
  /** `none on the shelf`; empty where enough is there. */
  readonly lacks: string;
}

export interface ToolLine {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  /** Why it stays on its hook. */
  readonly whyNot: string | null;
}

export interface AskedLine {
  readonly id: string;
  readonly href: string;
  readonly about: string;
  readonly chassis: string;
  readonly text: string;
  readonly by: string;
  readonly when: string;
  readonly answer: { readonly text: string; readonly by: string; readonly when: string } | null;
}
