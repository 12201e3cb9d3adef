import type { Problem, Result } from '../base/index.ts'
import type { Body, Spec } from './types.ts'

export type {
  Body, ChosenProducts, ClimateMonth, DepthReference, DoseEntry, Equipment, HelperId, LogEntry, NoteEntry, ReadingKey,
  ReadingMethod, ReadingSet, ReadingValues, Regime, Site, Sketch, Spec, StockItem, SurfaceKind, System, TargetBand,
  TargetKey, TargetOverrides, VolumeEstimate, Water,
} from './types.ts'

export declare function validateSpec(json: unknown): Result<Spec, readonly Problem[]>
export declare function migrate(json: unknown): Result<unknown>
export declare function toJson(spec: Spec): string
export declare function fromJson(text: string): Result<Spec, readonly Problem[]>
export declare function linkOf(spec: Spec, baseUrl: string): string
export declare function specFromLink(url: string): Result<Spec, readonly Problem[]>
export declare const demoSpec: Spec
export declare function blankSpec(): Spec
/** A ring of a body whose points can be edited. Segment i runs from node i to node i + 1. */
export type RingRef = { readonly of: 'outline' } | { readonly of: 'island'; readonly index: number } | { readonly of: 'feature'; readonly index: number }
export type Command = { readonly id: string; readonly args: unknown }
export declare function applyCommand(spec: Spec, command: Command): Result<Spec>
export declare function commandLabel(command: Command): string

export interface HistoryStep { readonly spec: Spec; readonly label: string; readonly mergeKey?: string | undefined }
export interface History { readonly past: readonly HistoryStep[]; readonly present: Spec; readonly future: readonly HistoryStep[] }
export declare function startHistory(spec: Spec): History
/** Edits with the same mergeKey in a row (one key per drag) become one step. */
export declare function record(history: History, spec: Spec, label: string, mergeKey?: string): History
export declare function undo(history: History): History
export declare function redo(history: History): History
export declare function undoLabel(history: History): string | undefined
export declare function redoLabel(history: History): string | undefined
/** A depth typed against the body's reference → depth from the datum [m], and back. */
export declare function depthFromReference(body: Body, typedM: number): number
export declare function depthToReference(body: Body, depthM: number): number
