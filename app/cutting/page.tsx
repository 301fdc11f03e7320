import type { Metadata } from 'next';
import { Suspense } from 'react';
import { CutOffPattern } from '@/components/cutting/bars';
import { CutCars } from '@/components/cutting/cars';
import { CutMarks, capital } from '@/components/cutting/marks';
import { Rack } from '@/components/cutting/rack';
import { SawBars } from '@/components/cutting/saw-bars';
import { Sawn } from '@/components/cutting/sawn';
import { PrintButton } from '@/components/ui/print-button';
import { FollowFloor } from '@/components/shop/follow';
import { Glyph } from '@/components/ui/glyph';
import { PageWaiting } from '@/components/ui/page-waiting';
import { Unbroken } from '@/components/ui/unbroken';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { cutDrawing } from '@/lib/server/queries/cutting/drawing';
import type { FoundPlan, ToDraw } from '@/lib/server/queries/cutting/drawing';
import { cuttingView } from '@/lib/server/queries/cutting/view';
import { cuttingAnswers } from '@/lib/solve/cutting-answers';
import '@/components/cutting/cutting.css';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Cutting' };

interface PageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

/** A list takes a few hundredths; one that can't be proved in its share is shown as far as it came, with its bound. */
const SECONDS = 6;

/** For everybody: whoever stands at the saw reads it, and it says no price. */
export default async function Page({ searchParams }: PageProps) {
  const { person } = await present();
  const { car = [] } = await searchParams;
  return (
    <>
      <ShopStrip current="cutting" who={person} />
      <main className="pg stack cutting">
        <Suspense fallback={<PageWaiting says="The cars are being read" />}>
          <Sheets chosen={[car].flat()} />
        </Suspense>
      </main>
    </>
  );
}

async function Sheets({ chosen }: { readonly chosen: readonly string[] }) {
  const clock = await floorClock(database());
  const view = await cuttingView(database(), chosen, new Date().toISOString());
  const { says, cars, items, toDraw, notes, sawn, asOf } = view;
  const answers = cuttingAnswers(
    toDraw.flatMap((each) => (each === null ? [] : [each.problem])),
    SECONDS,
  );
  const answerOf = (index: number): Promise<FoundPlan> | undefined =>
    answers[toDraw.slice(0, index).filter((each) => each !== null).length];
  return (
    <>
      <FollowFloor clock={clock} />
      <CutOffPattern />
      <div className="pagetop">
        <div>
          <h1>Cutting</h1>
          <p className="dim">
            <Unbroken says={says} />
          </p>
          <p className="dim onpaper">Cut sheet as of {asOf}. What was cut since is not in it.</p>
        </div>
        {items.length === 0 ? null : (
          <p className="acts">
            <PrintButton what="cut sheet" />
          </p>
        )}
      </div>
      <CutCars cars={cars} />
      {items.length === 0 ? <Nothing /> : <Mind />}
      {notes.length === 0 ? null : (
        <ul className="sheet lines">
          {notes.map((note) => (
            <li key={note}>
              <Glyph name="hint" size={20} />
              <span className="t">{note}</span>
            </li>
          ))}
        </ul>
      )}
      {items.map((item, index) => {
        const { key, name, terms, notes: said } = item;
        const [draw, answer] = [toDraw[index] ?? null, answerOf(index)];
        return (
          <section key={key} className="sheet material" aria-labelledby={`item-${key}`}>
            <header>
              <h2 id={`item-${key}`}>
                {capital(name)} <span className="small dim nb">{key}</span>
              </h2>
              <p className="dim">{terms}</p>
            </header>
            <Rack item={item} />
            {said.map((note) => (
              <p key={note} className="verdict">
                <Glyph name="error" size={20} /> <span>{note}</span>
              </p>
            ))}
            {draw === null || answer === undefined ? null : (
              <Suspense fallback={<Waiting />}>
                <Drawn item={key} name={name} draw={draw} answer={answer} />
              </Suspense>
            )}
          </section>
        );
      })}
      {items.length === 0 ? null : (
        <div className="lists">
          {items.map((item) => (
            <CutMarks key={item.key} item={item} />
          ))}
        </div>
      )}
      <Sawn sawn={sawn} />
    </>
  );
}

interface DrawnProps {
  readonly item: string;
  readonly name: string;
  readonly draw: ToDraw;
  readonly answer: Promise<FoundPlan>;
}

async function Drawn({ item, name, draw, answer }: DrawnProps) {
  const found = await answer.catch((error: unknown) => {
    console.error(error);
    return null;
  });
  if (found === null)
    return (
      <p className="verdict">
        <Glyph name="error" size={20} />{' '}
        <span>
          <b>No plan could be worked out just now.</b> The list below stands. Ask for the page again.
        </span>
      </p>
    );
  return <SawBars item={item} drawing={cutDrawing(draw, found)} name={name} />;
}

function Waiting() {
  return (
    <div className="waiting" aria-busy="true">
      <p className="small dim">
        <Glyph name="clock" size={20} /> The fewest lengths are being worked out
      </p>
      <span className="hatch" />
    </div>
  );
}

function Nothing() {
  return (
    <section className="sheet nothing">
      <Glyph name="passed" size={32} />
      <div>
        <h2>Nothing is to be cut</h2>
        <p>
          What a plan says under “pieces” stands here, for every car on which that work is not finished: how
          to cut it from the fewest lengths, drawn to scale.
        </p>
      </div>
    </section>
  );
}

/** Common practice at a saw. */
function Mind() {
  return (
    <p className="sheet mind">
      <Glyph name="caution" />
      <span>
        Eye protection on before the saw runs, gloves off while it does. Set the stop from the far side of the
        blade: each piece has its cut behind it. Deburr both ends; write mark and car on the piece before it
        leaves the bench.
      </span>
    </p>
  );
}
