-- The site log, what is attached to it, and what stations tell of themselves.
CREATE TABLE log_entry (
    network INTEGER NOT NULL REFERENCES network (network),
    entry INTEGER NOT NULL,
    time_microseconds INTEGER NOT NULL,
    site TEXT NOT NULL,
    kind TEXT NOT NULL,
    fit_out TEXT,
    words TEXT NOT NULL,
    PRIMARY KEY (network, entry)
) STRICT, WITHOUT ROWID;

-- Content by its SHA-256: the same file attached twice is there once.
CREATE TABLE attachment (
    sha256 TEXT PRIMARY KEY,
    content BLOB NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE log_attachment (
    network INTEGER NOT NULL,
    entry INTEGER NOT NULL,
    place INTEGER NOT NULL,
    name TEXT NOT NULL,
    sha256 TEXT NOT NULL REFERENCES attachment (sha256),
    PRIMARY KEY (network, entry, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE telemetry (
    network INTEGER NOT NULL REFERENCES network (network),
    station INTEGER NOT NULL,
    step_microseconds INTEGER NOT NULL,
    hash INTEGER NOT NULL,
    time_microseconds INTEGER NOT NULL,
    time_resolution_microseconds INTEGER NOT NULL,
    time_text TEXT,
    clock_offset_microseconds INTEGER,
    battery_volts REAL,
    supply_volts REAL,
    temperature_celsius REAL,
    channel_use_ratio REAL,
    transmit_ratio REAL,
    other_fields TEXT,
    PRIMARY KEY (network, station, step_microseconds, hash)
) STRICT, WITHOUT ROWID;
