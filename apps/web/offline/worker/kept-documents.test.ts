import { describe, expect, it } from 'vitest';
import { blankId, keptDocumentOf, keptDocuments } from './kept-documents';

const id = '01936f3e-7c3a-7000-8000-000000000001';

describe('keptDocumentOf', () => {
  it('finds the document of each room of a visit', () => {
    expect(keptDocumentOf(`/visits/${id}`)).toEqual({ address: `/visits/${blankId}`, id });
    expect(keptDocumentOf(`/visits/${id}/about`)).toEqual({ address: `/visits/${blankId}/about`, id });
    expect(keptDocumentOf(`/visits/${id}/sign-off`)).toEqual({ address: `/visits/${blankId}/sign-off`, id });
    expect(keptDocumentOf('/board')).toEqual({ address: '/board', id: null });
  });

  it('names only documents that are kept', () => {
    for (const path of [
      '/',
      '/board',
      '/practice',
      `/visits/${id}`,
      `/visits/${id}/about`,
      `/visits/${id}/sign-off`,
    ]) {
      expect(keptDocuments).toContain(keptDocumentOf(path)?.address);
    }
  });

  it('leaves everything else to the network', () => {
    for (const path of [
      '/cars',
      `/cars/${id}`,
      `/visits/${id}/other`,
      '/visits/7',
      `/x/visits/${id}`,
      '/sign-in',
    ]) {
      expect(keptDocumentOf(path)).toBeNull();
    }
  });
});
