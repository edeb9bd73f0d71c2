-- Receptions of each network, and the addresses that name its stations.
CREATE TABLE network (
    network INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    last_ingest INTEGER NOT NULL
) STRICT;

CREATE TABLE station (
    network INTEGER NOT NULL REFERENCES network (network),
    station INTEGER NOT NULL,
    address TEXT NOT NULL,
    PRIMARY KEY (network, station),
    UNIQUE (network, address)
) STRICT, WITHOUT ROWID;

-- Times in microseconds since 1970 UTC. step_microseconds and hash are the identity of the record; as the step comes first, an import in order of
-- time appends to that index, and a period is found by it.
CREATE TABLE reception (
    network INTEGER NOT NULL REFERENCES network (network),
    ingest INTEGER NOT NULL,
    step_microseconds INTEGER NOT NULL,
    hash INTEGER NOT NULL,
    time_microseconds INTEGER NOT NULL,
    time_resolution_microseconds INTEGER NOT NULL,
    time_text TEXT,
    clock_offset_microseconds INTEGER,
    receiver INTEGER NOT NULL,
    originator INTEGER,
    last_sender INTEGER,
    level_dbm REAL,
    snr_db REAL,
    level_is_signal_power INTEGER NOT NULL,
    hops_taken INTEGER,
    hop_limit INTEGER,
    frequency_hz REAL,
    bandwidth_hz REAL,
    spreading_factor INTEGER,
    packet_id TEXT,
    other_fields TEXT,
    PRIMARY KEY (network, ingest),
    UNIQUE (network, step_microseconds, hash)
) STRICT, WITHOUT ROWID;
