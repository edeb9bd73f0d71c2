-- The site log, what is attached to it, and what stations tell of themselves.
CREATE TABLE log_entry (
    network BIGINT NOT NULL REFERENCES network (network),
    entry BIGINT NOT NULL,
    time_microseconds BIGINT NOT NULL,
    site TEXT NOT NULL,
    kind TEXT NOT NULL,
    fit_out TEXT,
    words TEXT NOT NULL,
    PRIMARY KEY (network, entry)
);

-- Content by its SHA-256: the same file attached twice is there once.
CREATE TABLE attachment (
    sha256 TEXT PRIMARY KEY,
    content BYTEA NOT NULL
);

CREATE TABLE log_attachment (
    network BIGINT NOT NULL,
    entry BIGINT NOT NULL,
    place BIGINT NOT NULL,
    name TEXT NOT NULL,
    sha256 TEXT NOT NULL REFERENCES attachment (sha256),
    PRIMARY KEY (network, entry, place)
);

CREATE TABLE telemetry (
    network BIGINT NOT NULL REFERENCES network (network),
    station BIGINT NOT NULL,
    step_microseconds BIGINT NOT NULL,
    hash BIGINT NOT NULL,
    time_microseconds BIGINT NOT NULL,
    time_resolution_microseconds BIGINT NOT NULL,
    time_text TEXT,
    clock_offset_microseconds BIGINT,
    battery_volts DOUBLE PRECISION,
    supply_volts DOUBLE PRECISION,
    temperature_celsius DOUBLE PRECISION,
    channel_use_ratio DOUBLE PRECISION,
    transmit_ratio DOUBLE PRECISION,
    other_fields TEXT,
    PRIMARY KEY (network, station, step_microseconds, hash)
);
