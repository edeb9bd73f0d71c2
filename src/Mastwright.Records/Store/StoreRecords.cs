using Mastwright.Evidence;

namespace Mastwright.Records.Store;

/// <summary>A record to be added, with its identity.</summary>
/// <param name="Record">The record.</param>
/// <param name="Key">Its key, counted within its source where it has no packet number.</param>
public readonly record struct KeyedRecord(ReceptionRecord Record, RecordKey Key);

/// <summary>A record as the store has it.</summary>
/// <param name="Ingest">Its number in the order in which records came to the store, from 1.</param>
/// <param name="Record">The record.</param>
public sealed record StoredRecord(long Ingest, ReceptionRecord Record);

/// <summary>What became of a batch.</summary>
/// <param name="Added">How many of its records are new.</param>
/// <param name="AlreadyThere">How many were in the store, or twice in the batch.</param>
/// <param name="LastIngest">The network's highest ingest number after it.</param>
/// <param name="WriteTime">How long the write transaction was open.</param>
public readonly record struct AddedBatch(int Added, int AlreadyThere, long LastIngest, TimeSpan WriteTime);
