-- What records compact has made of old records: one row an hour for what is alike, and the identities of what it stands for, so that a record that is brought again is still known.
-- Unknown is 0 in receiver to bandwidth_hz, and -1 in hops_taken.
CREATE TABLE hour_summary (
    network INTEGER NOT NULL REFERENCES network (network),
    hour_microseconds INTEGER NOT NULL,
    receiver INTEGER NOT NULL,
    originator INTEGER NOT NULL,
    last_sender INTEGER NOT NULL,
    frequency_hz INTEGER NOT NULL,
    bandwidth_hz INTEGER NOT NULL,
    spreading_factor INTEGER NOT NULL,
    hops_taken INTEGER NOT NULL,
    records INTEGER NOT NULL,
    first_microseconds INTEGER NOT NULL,
    last_microseconds INTEGER NOT NULL,
    level_records INTEGER NOT NULL,
    level_sum_dbm REAL NOT NULL,
    level_least_dbm REAL,
    level_most_dbm REAL,
    snr_records INTEGER NOT NULL,
    snr_sum_db REAL NOT NULL,
    power_records INTEGER NOT NULL,
    power_sum_dbm REAL NOT NULL,
    PRIMARY KEY (network, hour_microseconds, receiver, originator, last_sender, frequency_hz, bandwidth_hz, spreading_factor, hops_taken)
) STRICT, WITHOUT ROWID;

CREATE TABLE compacted_key (
    network INTEGER NOT NULL REFERENCES network (network),
    step_microseconds INTEGER NOT NULL,
    hash INTEGER NOT NULL,
    PRIMARY KEY (network, step_microseconds, hash)
) STRICT, WITHOUT ROWID;
