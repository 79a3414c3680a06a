// A list of names as it was given: pasted, or a file.

export interface GivenList {
  readonly file: string;
  readonly text: string;
}

export const emptyList: GivenList = { file: 'pasted.csv', text: '' };
