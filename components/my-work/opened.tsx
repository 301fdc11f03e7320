'use client';

import Link from 'next/link';
import { useState } from 'react';
import { PhotoStrip } from '@/components/photos/photo-strip';
import { ActForm } from '@/components/act/act-form';
import { ActList } from '@/components/act/act-list';
import { DeskProvider, useDesk } from '@/components/act/desk-context';
import { answering, asking } from '@/components/act/forms/asking';
import { Again } from '@/components/car/again';
import { PlacesProvider } from '@/components/car/places';
import { RefusalLines } from '@/components/shop/refusal-list';
import { PlateFace, plateSays } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { OpenedJob } from '@/lib/wire/views/my-work';
import type { ActRef } from '@/lib/wire/views/desk';
import { Asked } from './asked';
import { JobSteps } from './job-steps';
import { Kit, Tools } from './kit';

/** One job, whole: cautions before anything else, then what to do, with what, and at which number. */
export function Opened({ job }: { readonly job: OpenedJob }) {
  return (
    <DeskProvider desk={job.desk}>
      <PlacesProvider ways={job.places} asked={null} open={[]} version={job.version}>
        <Again at={job.again} />
        <Job job={job} />
      </PlacesProvider>
    </DeskProvider>
  );
}

function Job({ job }: { readonly job: OpenedJob }) {
  const { row, state, leftAs, cautions, asks } = job;
  // The form that starts it shows them itself, and waits until they are read.
  const isStart = row.acts.some(({ type }) => type === 'start-operation');
  const isFar = isFarFromDone(job);
  return (
    <article className="job" aria-labelledby="job-name">
      <JobHead job={job} />
      <Told />
      {leftAs === null ? null : (
        <p className="leftas">
          <Glyph name="clock" />
          <span>
            Left as: <b>{leftAs}</b>
          </span>
        </p>
      )}
      <PhotoStrip photos={row.photos ?? []} />
      {row.waits.length === 0 ? null : (
        <section className="refusal jobwaits" aria-labelledby="job-waits">
          <header>
            <Glyph name="gclosed" size={32} />
            <h3 id="job-waits">{state === 'running' ? 'No longer met' : 'It waits'}</h3>
          </header>
          <RefusalLines lines={row.waits} />
        </section>
      )}
      {cautions.length === 0 || isStart ? null : <Cautions cautions={cautions} />}
      {isFar ? null : <Acts job={job} isEarly={false} />}
      <div className="jobcols">
        <div className="jobmain">
          <JobSteps job={job} />
          {isFar ? <Acts job={job} isEarly /> : null}
        </div>
        <div className="jobside">
          <Kit lines={job.hardware} kitHref={job.kitHref} lacks={job.lacks} />
          <Tools lines={job.tools} />
        </div>
      </div>
      {asks.length === 0 ? null : <Asked title="Asked about this" asks={asks} />}
      <AskOrStop job={job} />
    </article>
  );
}

interface ActsProps {
  readonly job: OpenedJob;
  readonly isEarly: boolean;
}

function Acts({ job: { row }, isEarly }: ActsProps) {
  if (row.acts.length === 0 && row.sheet === null) return null;
  return (
    <section className={isEarly ? 'sheet jobacts early' : 'sheet jobacts'} aria-label="What can be done now">
      {row.sheet === null ? null : (
        <Link className="btn main" href={row.sheet} prefetch={false}>
          {row.open}: the sign-off sheet <Glyph name="arrow" size={16} />
        </Link>
      )}
      <ActList acts={row.acts} job={row.job} />
    </section>
  );
}

/** Steps are left: finishing it is at hand, and not the next thing to do; it stands below them. */
const isFarFromDone = ({ state, body }: OpenedJob): boolean =>
  state === 'running' && body.some(({ isDone }) => !isDone);

function JobHead({ job }: { readonly job: OpenedJob }) {
  const { car, kind, name, meta, state } = job;
  const face = { chassis: car.chassis, colour: car.colour, crew: car.crew, loose: car.loose };
  return (
    <header className="jobhead">
      <Link className="platecard" href={`/cars/${encodeURIComponent(car.id)}`} prefetch={false}>
        <PlateFace {...face} />
        <span className="vh">{plateSays(face)}</span>
      </Link>
      <div>
        <p className="opno">
          {kind}
          {state === 'running' ? (
            <b className="go">, running</b>
          ) : state === 'paused' ? (
            <b>, paused</b>
          ) : null}
        </p>
        <h2 id="job-name">{name}</h2>
        <p className="meta small">
          {meta.map((each) => (
            <span key={each}>{each}</span>
          ))}
        </p>
      </div>
    </header>
  );
}

/** What was recorded last, from this screen. */
function Told() {
  const { told } = useDesk();
  return told === null ? null : (
    <p className="told">
      <Glyph name="passed" size={20} />
      <span>
        <b>Recorded.</b> {told.text}
      </span>
    </p>
  );
}

function Cautions({ cautions }: Pick<OpenedJob, 'cautions'>) {
  return (
    <section className="cautions standing" aria-label="Cautions">
      <div className="ct">
        <h3>
          <Glyph name="caution" /> Cautions
        </h3>
        <dl>
          {cautions.map(({ hazard, text }) => (
            <div key={hazard}>
              <dt>{hazard}.</dt> <dd>{text}</dd>
            </div>
          ))}
        </dl>
      </div>
    </section>
  );
}

type Trouble = 'ask' | 'answer' | 'report-finding' | 'place-hold';

/** Stuck: a question to the lead lets work go on; what can't go on is held; what is wrong is a finding. */
function AskOrStop({ job }: { readonly job: OpenedJob }) {
  const { desk } = useDesk();
  const [open, setOpen] = useState<Trouble | null>(null);
  const always = (type: ActRef['type']): ActRef | undefined => desk.always.find((each) => each.type === type);
  const note = always('add-note');
  const about = job.asksAbout;
  const isAsked = job.asks.some(({ answer }) => answer === null);
  const noteAct = (key: string): ActRef | undefined =>
    note === undefined ? undefined : { ...note, kind: 'operation', key };
  const acts: readonly (readonly [Trouble, string, ActRef | undefined])[] = [
    ['ask', 'Ask the lead', about === null ? undefined : noteAct(asking(about))],
    ['answer', 'Answer', about === null || !isAsked ? undefined : noteAct(answering(about))],
    ['report-finding', 'Something is wrong', always('report-finding')],
    ['place-hold', 'It can’t go on', always('place-hold')],
  ];
  const chosen = acts.find(([name]) => name === open)?.[2];
  return (
    <section className="sheet askstop" aria-label="Ask, or stop">
      <p className="oracts">
        {acts.map(([name, says, act]) =>
          act === undefined ? null : (
            <button
              key={name}
              type="button"
              className="btn"
              aria-expanded={open === name}
              onClick={() => setOpen(open === name ? null : name)}
            >
              {says}
            </button>
          ),
        )}
        <Link className="btn" href={`/cars/${encodeURIComponent(job.car.id)}#trouble`} prefetch={false}>
          More on the car’s page
        </Link>
      </p>
      {chosen === undefined ? null : <ActForm key={`${open ?? ''} ${chosen.key}`} act={chosen} />}
    </section>
  );
}
