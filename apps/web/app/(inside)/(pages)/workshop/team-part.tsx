'use client';

import { MemberNew, type Member, type Role } from '@pullbook/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { Dialog } from '../../../../components/dialog/dialog';
import { ChoiceField } from '../../../../components/field/choice-field';
import { TextField } from '../../../../components/field/text-field';
import { readValues } from '../../../../components/form/read-values';
import { useDraft } from '../../../../components/form/use-draft';
import { Skeleton, Tag } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useNotices } from '../../../../components/notices/notices';
import { useUnits } from '../../../../components/units/use-units';
import { useSignedInMe } from '../../../../queries/people/use-me';
import { useAddMember, useChangeMember, useTeam } from '../../../../queries/people/use-team';
import styles from './workshop.module.css';

const roles: ReadonlyArray<{ value: Role; label: string }> = [
  { value: 'owner', label: 'owner' },
  { value: 'tuner', label: 'tuner' },
  { value: 'desk', label: 'front desk' },
];

/** Who works here, and as what. */
export function TeamPart() {
  const team = useTeam();
  const [isAdding, setAdding] = useState(false);
  return (
    <section className="sheet stack" aria-labelledby="team">
      <div className="row">
        <h2 id="team">Team</h2>
        <span className="grow" />
        <Button onClick={() => setAdding(true)}>Add person</Button>
      </div>
      <ProblemNote error={team.error} onRetry={() => void team.refetch()} />
      {team.isPending ? <Skeleton lines={3} label="Loading the team" /> : null}
      <ul className={styles.lines}>
        {(team.data ?? []).map((member) => (
          <MemberLine key={member.id} member={member} />
        ))}
      </ul>
      {isAdding ? (
        <Dialog title="Add person" onClose={() => setAdding(false)}>
          <MemberForm onDone={() => setAdding(false)} />
        </Dialog>
      ) : null}
    </section>
  );
}

function MemberLine({ member }: Readonly<{ member: Member }>) {
  const me = useSignedInMe();
  const change = useChangeMember();
  const notices = useNotices();
  const isMe = me.member.id === member.id;
  const update = (part: { role?: Role; active?: boolean }) =>
    change.mutate(
      { id: member.id, revision: member.revision, change: part },
      { onError: (error) => notices.mind(`${member.name} is as before. ${error.message}`) },
    );
  return (
    <li>
      <span className={styles.person}>
        <b>{member.name}</b> <span className="soft">{member.email}</span>
      </span>
      {member.active ? null : <Tag shape="–">left</Tag>}
      {isMe ? (
        <Tag>{member.role}, you</Tag>
      ) : (
        <>
          <select
            aria-label={`Role of ${member.name}`}
            className={styles.role}
            value={member.role}
            disabled={change.isPending}
            onChange={(event) => update({ role: event.target.value as Role })}
          >
            {roles.map((role) => (
              <option key={role.value} value={role.value}>
                {role.label}
              </option>
            ))}
          </select>
          <Button
            busy={change.isPending}
            aria-label={`${member.active ? 'Close account' : 'Open account again'}: ${member.name}`}
            onClick={() => update({ active: !member.active })}
          >
            {member.active ? 'Close account' : 'Open account again'}
          </Button>
        </>
      )}
    </li>
  );
}

function MemberForm({ onDone }: Readonly<{ onDone: () => void }>) {
  const units = useUnits();
  const notices = useNotices();
  const add = useAddMember();
  const draft = useDraft({ name: '', email: '', role: 'tuner', password: '' });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, MemberNew, (from) => ({
      name: from.text('name'),
      email: from.text('email'),
      role: from.text('role'),
      password: draft.values.password,
    }));
    if ('faults' in read) return draft.fail(read.faults);
    return add.mutate(read.data, {
      onSuccess: (member) => {
        notices.done(`${member.name} can sign in now.`);
        onDone();
      },
      onError: draft.failFrom,
    });
  };
  return (
    <form onSubmit={submit} noValidate className="stack">
      <TextField label="Name" {...draft.bind('name')} />
      <TextField label="Email" type="email" {...draft.bind('email')} />
      <ChoiceField label="Works as" choices={roles} {...draft.bind('role')} />
      <TextField
        label="First password"
        type="password"
        autoComplete="new-password"
        hint="At least 10 characters; hand it over in person."
        {...draft.bind('password')}
      />
      <ProblemNote error={add.error} />
      <Button type="submit" kind="act" big busy={add.isPending}>
        Add this person
      </Button>
    </form>
  );
}
