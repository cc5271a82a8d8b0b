import type { Point } from './columns.ts';

/** What a trace shows. */

export interface TraceBand {
  readonly lowC: number;
  readonly highC: number;
  readonly text: string;
  readonly working: boolean;
}

/** Stages and limits in force for a while. */
export interface TraceSpan {
  readonly fromMs: number;
  readonly toMs: number;
  readonly bands: readonly TraceBand[];
  readonly fabricC: number;
  readonly fabricText: string;
  /** Where the warning begins: the limit less the allowance. */
  readonly warnC: number;
  readonly cementC: number | null;
  readonly cementText: string;
}

export interface TraceMark {
  readonly id: string;
  readonly atMs: number;
  /** An alarm was raised. */
  readonly strong: boolean;
}

export interface TraceData {
  /** A line a probe. */
  readonly lines: readonly (readonly Point[])[];
  readonly spans: readonly TraceSpan[];
  readonly gaps: readonly { readonly fromMs: number; readonly toMs: number; readonly text: string }[];
  readonly marks: readonly TraceMark[];
  readonly chosen: string | null;
  readonly range: { readonly lowC: number; readonly highC: number };
  /** Without words beside bands and limits. */
  readonly quiet: boolean;
}

export const noTrace: TraceData = {
  lines: [],
  spans: [],
  gaps: [],
  marks: [],
  chosen: null,
  range: { lowC: 0, highC: 1 },
  quiet: false,
};
