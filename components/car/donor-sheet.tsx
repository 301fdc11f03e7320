'use client';

import { Glyph } from '@/components/ui/glyph';
import type { DonorPart } from '@/lib/wire/views/car';
import { Fold } from './fold';
import './donor-sheet.css';

/** What comes off the donor: what to expect of each part, where to look, and what became of it. */
export function DonorSheet({ parts }: { readonly parts: readonly DonorPart[] }) {
  const replaced = parts.filter(({ piece }) => piece !== '').length;
  return (
    <section className="sheet folded donor" aria-labelledby="donor-head">
      <header>
        <h2 id="donor-head">Donor</h2>
        <span className="dim says">
          {parts.length === 0 ? '' : 'the usual grade is what to expect; the part decides'}
        </span>
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
                  <th scope="col">Usual grade</th>
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
                    <td>{part.grade === '' ? <span className="dim">none said</span> : part.grade}</td>
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
