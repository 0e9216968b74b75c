import type { Metadata } from 'next';
import { Empty } from '../../components/marks/marks';

export const metadata: Metadata = { title: 'Without network' };

/** Shown where a page is neither to be had from the server nor kept on this device. */
export default function WithoutNetwork() {
  return (
    <main className="stack" style={{ padding: '24px 16px', maxWidth: '44rem', margin: '0 auto' }}>
      <h1>Without network</h1>
      <Empty title="This page is not kept on this device.">
        <p>
          The board and the visits that were opened on it are. What was written down here is safe and goes out
          by itself when the network is back.
        </p>
      </Empty>
      {/* A plain link: without network it has to be a new document. */}
      <a href="/board">To the board</a>
    </main>
  );
}
