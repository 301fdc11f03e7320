/** What the set-up's pages get. No secret and no hash of one is in any of it. */
import type { Role } from '@/lib/domain/base/vocabulary';

export interface SetUpStep {
  readonly key: 'shop' | 'people' | 'tablets' | 'tools' | 'plans' | 'cars';
  readonly says: string;
  readonly isDone: boolean;
  /** Left out so far: something after it is done. */
  readonly isLeft: boolean;
}

export interface SetUpSteps {
  readonly steps: readonly SetUpStep[];
  /** No car was ever begun: whoever comes here is led from step to step. */
  readonly isBeginning: boolean;
}

export interface ShopSettingView {
  readonly name: string;
  readonly zone: string;
  /** Day and time by that calendar. */
  readonly now: string;
  /** To choose from; any other name that the calendar knows is taken too. */
  readonly zones: readonly string[];
  /** Only an owner, and not in the demo. */
  readonly mayChange: boolean;
  /** The time zone too. */
  readonly mayMove: boolean;
  readonly isDemo: boolean;
}

export interface HeldQualification {
  readonly key: string;
  /** `Jun 2028`, `holds`, `from 3 Mar`. */
  readonly says: string;
  /** It doesn't hold today, or not for another month. */
  readonly isEnding: boolean;
  /** It holds today or will: it can be ended. */
  readonly mayEnd: boolean;
}

export interface SetUpPerson {
  readonly id: string;
  readonly name: string;
  readonly initials: string;
  readonly roles: readonly Role[];
  readonly held: readonly HeldQualification[];
  /** `password and PIN`, `PIN`, `no PIN yet`. */
  readonly secrets: string;
  /** They can't sign in, or can't sign, until they used a link. */
  readonly needsLink: boolean;
  /** A link was made that is still good: until then. */
  readonly linkUntil: string | null;
  readonly restsUntil: string | null;
  /** Whoever looks at this may make them a link. */
  readonly mayLink: boolean;
  readonly isOneself: boolean;
  /** Whoever looks at this may give them other roles. */
  readonly mayChangeRoles: boolean;
  /** Whoever looks at this may remove them. */
  readonly mayRemove: boolean;
  /** The running work that they would leave behind; null: none. */
  readonly atWork: string | null;
}

export interface PeopleView {
  readonly today: string;
  readonly yesterday: string;
  readonly people: readonly SetUpPerson[];
  /** Every qualification that somebody holds or a plan asks for. */
  readonly keys: readonly string[];
  readonly takenIds: readonly string[];
}

export interface SetUpTablet {
  readonly device: string;
  readonly name: string;
  /** By whom and when it was enrolled, and when it was last in touch. */
  readonly says: string;
  /** Who is signed in on it now. */
  readonly who: string | null;
  readonly minutes: number;
  readonly isThis: boolean;
  /** Taken off, by whom and when; null: it takes PINs. */
  readonly revoked: string | null;
}

export interface TabletsView {
  readonly tablets: readonly SetUpTablet[];
  readonly here: 'tablet' | 'demo' | 'unknown' | 'revoked';
  readonly hereName: string | null;
  /** Enrolling is the owner's; taking off is a lead's too. */
  readonly mayEnrol: boolean;
  readonly owners: readonly string[];
}

export interface SetUpTool {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  /** It reads a check's values and turns nothing. */
  readonly isGauge: boolean;
  readonly range: string;
  readonly length: string | null;
  readonly unit: string;
  readonly calibration: string;
  readonly isUsable: boolean;
  /** It is suspect and nobody has tested it since. */
  readonly isSuspect: boolean;
  readonly cycles: string | null;
  /** What rests on it and is in doubt by it now; null: nothing. */
  readonly inDoubt: string | null;
}

export interface ToolTouch {
  readonly car: string;
  readonly chassis: string;
  readonly colour: string | null;
  readonly isDelivered: boolean;
  readonly joint: string;
  readonly name: string;
  readonly href: string;
  /** What the fasteners got by it, in the joint's unit, and the window. */
  readonly got: string;
  readonly when: string;
  readonly who: string;
  /** The remedy, in the shop's words; null: it stands. */
  readonly doubt: string | null;
}

export interface ToolPageView {
  readonly tool: SetUpTool;
  /** Since when it is counted what it touched. */
  readonly since: string | null;
  readonly touches: readonly ToolTouch[];
  readonly cars: number;
  readonly calibrations: readonly { readonly says: string; readonly certificate: string | null }[];
  readonly suspect: readonly { readonly says: string; readonly found: string; readonly isOpen: boolean }[];
  readonly today: string;
}

export interface SetUpAdapter {
  readonly id: string;
  readonly name: string;
  readonly says: string;
}

export interface ToolsView {
  readonly tools: readonly SetUpTool[];
  readonly adapters: readonly SetUpAdapter[];
  readonly today: string;
}

export interface SetUpPlan {
  readonly hash: string;
  readonly model: string;
  readonly revision: string;
  readonly says: string;
  readonly cars: number;
}

export interface PlansView {
  readonly plans: readonly SetUpPlan[];
}

export interface OfferedOption {
  readonly key: string;
  readonly name: string;
  readonly choices: readonly string[];
  readonly usual: string | null;
}

export interface StartCarView {
  readonly plans: readonly {
    readonly hash: string;
    readonly says: string;
    readonly options: readonly OfferedOption[];
  }[];
  readonly takenNumbers: readonly string[];
}
