export const CANCELLED = 'The import was cancelled; nothing was changed.';

/** What a file is called in sentences. */
export const nameOf = (file: { readonly name: string }): string => file.name.slice(0, 100) || 'file';
