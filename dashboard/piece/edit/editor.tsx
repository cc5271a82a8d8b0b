/** Placeholder until the editor is written in the next step. */
export const Editor = ({ id }: { readonly id: string | null }) => <p>{id}</p>;
