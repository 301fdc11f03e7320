import type { Metadata } from 'next';
import { AddPerson } from '@/components/set-up/add-person';
import { PeopleList } from '@/components/set-up/people-list';
import { QualificationTable } from '@/components/set-up/qualification-table';
import { database } from '@/lib/server/database';
import { peopleView } from '@/lib/server/queries/set-up/people';
import { Frame } from '../frame';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'People' };

export default function Page() {
  return (
    <Frame
      current="people"
      title="People"
      says="Who may do what, and until when. A signature keeps what its signer held that day."
      page={async ({ person }) => {
        const view = await peopleView(database(), person);
        return (
          <>
            <PeopleList view={view} />
            <QualificationTable view={view} />
            <AddPerson view={view} mayAddOwner={person.roles.includes('owner')} />
          </>
        );
      }}
    />
  );
}
