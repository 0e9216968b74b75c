import type { FastifyReply, FastifyRequest } from 'fastify';

/** Where this book is served, as the asking browser knows it: what QR codes on paper lead to. */
export function originOf(request: FastifyRequest): string {
  return `${request.protocol}://${request.host}`;
}

/** A PDF to be shown in the browser, with a file name fit for every system. */
export function sendPdf(reply: FastifyReply, pdf: Buffer, name: string): FastifyReply {
  const plain = name
    .normalize('NFKD')
    .replace(/[^\w-]+/g, '-')
    .replace(/-+/g, '-')
    .replace(/^-|-$/g, '');
  return reply
    .type('application/pdf')
    .header('content-disposition', `inline; filename="${plain}.pdf"`)
    .header('cache-control', 'private, no-store')
    .send(pdf);
}
