/** The name under which the model of an item is found: that of the version that it was judged with when it left, else of the newest. */
export const modelKey = ({ modelId, modelVersion }: { readonly modelId: string; readonly modelVersion: number | null }): string =>
  modelVersion === null ? modelId : versionKey(modelId, modelVersion);

/** An older version of a grown model. No model can be called so, for the sign is not part of names. */
export const versionKey = (modelId: string, version: number): string => `${modelId}@${version}`;
