import { ButtonLink } from '../components/button/button';

export default function NotFound() {
  return (
    <main style={{ maxWidth: 560, margin: '12vh auto', padding: 20 }} className="stack">
      <h1>No such page in this book</h1>
      <p>The address may be mistyped, or the record belongs to another workshop.</p>
      <p>
        <ButtonLink href="/board" kind="act">
          To the board
        </ButtonLink>
      </p>
    </main>
  );
}
