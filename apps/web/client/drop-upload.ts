/** Throws away a file that came in and that nobody took in (tus protocol 1.0, termination). */
export async function dropUpload(uploadId: string): Promise<void> {
  const { Upload } = await import('tus-js-client');
  await Upload.terminate(`/api/v1/uploads/${uploadId}`);
}
