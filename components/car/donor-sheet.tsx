'use client';

import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';
import type { DonorPart } from '@/lib/wire/views/car';
import { Fold } from './fold';
import './donor-sheet.css';

interface DonorSheetProps {
  readonly car: string;
  readonly parts: readonly DonorPart[];
}

/** What comes off the donor: what to expect of each part, where to look, and what became of it. */
export function DonorSheet({ car, parts }: DonorSheetProps) {
  const replaced = parts.filter(({ piece }) => piece !== '').length;
  return (
    <section className="sheet folded donor" aria-labelledby="donor-head">
      <header>
        <h2 id="donor-head">Donor</h2>
        {parts.length === 0 ? null : (
          <Link className="btn small" href={`/cars/${encodeURIComponent(car)}/donor`} prefetch={false}>
            Grade the donor
          </Link>
        )}
      </header>
      {parts.length === 0 ? (
        <p className="idle dim">This plan takes nothing off a donor.</p>
      ) : (
        <Fold
          id="donor"
          title="donor parts"
          says={replaced === 0 ? 'none replaced so far' : `${String(replaced)} replaced`}
          count={parts.length}
        >
          <div className="donortable" role="region" aria-label="Donor parts" tabIndex={0}>
            <table>
              <thead>
                <tr>
                  <th scope="col">Part</th>
                  <th scope="col">Grade</th>
                  <th scope="col">Look at</th>
                  <th scope="col">Now</th>
                </tr>
              </thead>
              <tbody>
                {parts.map((part) => (
                  <tr key={part.href}>
                    <th scope="row">
                      <a href={part.href}>{part.name}</a>
                      {part.critical ? (
                        <span className="small">
                          {' '}
                          <Glyph name="critical" size={16} /> critical
                        </span>
                      ) : null}
                    </th>
                    <td>
                      {part.found !== '' ? (
                        part.found
                      ) : part.grade === '' ? (
                        <span className="dim">none said</span>
                      ) : (
                        <span className="dim">usually {part.grade}</span>
                      )}
                    </td>
                    <td>
                      {part.lookedAt}
                      {part.outside === '' ? null : <span className="small dim"> away {part.outside}</span>}
                    </td>
                    <td>
                      {part.state}
                      {part.piece === '' ? null : <span className="small"> {part.piece}</span>}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </Fold>
      )}
    </section>
  );
}
