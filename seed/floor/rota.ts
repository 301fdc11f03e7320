/** Who is at work when: one running clock for each person, whichever car it is on. */
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { Span } from './calendar';

export class Rota {
  private readonly booked = new Map<PersonId, Span[]>();

  isFree(person: PersonId, spans: readonly Span[]): boolean {
    const taken = this.booked.get(person) ?? [];
    return spans.every(({ from, to }) => taken.every((each) => each.to <= from || to <= each.from));
  }

  book(person: PersonId, spans: readonly Span[]): void {
    this.booked.set(person, [...(this.booked.get(person) ?? []), ...spans]);
  }
}
