-- What records compact has made of old records: one row an hour for what is alike, and the identities of what it stands for, so that a record that is brought again is still known.
-- Unknown is 0 in receiver to bandwidth_hz, and -1 in hops_taken.
CREATE TABLE hour_summary (
    network BIGINT NOT NULL REFERENCES network (network),
    hour_microseconds BIGINT NOT NULL,
    receiver BIGINT NOT NULL,
    originator BIGINT NOT NULL,
    last_sender BIGINT NOT NULL,
    frequency_hz BIGINT NOT NULL,
    bandwidth_hz BIGINT NOT NULL,
    spreading_factor BIGINT NOT NULL,
    hops_taken BIGINT NOT NULL,
    records BIGINT NOT NULL,
    first_microseconds BIGINT NOT NULL,
    last_microseconds BIGINT NOT NULL,
    level_records BIGINT NOT NULL,
    level_sum_dbm DOUBLE PRECISION NOT NULL,
    level_least_dbm DOUBLE PRECISION,
    level_most_dbm DOUBLE PRECISION,
    snr_records BIGINT NOT NULL,
    snr_sum_db DOUBLE PRECISION NOT NULL,
    power_records BIGINT NOT NULL,
    power_sum_dbm DOUBLE PRECISION NOT NULL,
    PRIMARY KEY (network, hour_microseconds, receiver, originator, last_sender, frequency_hz, bandwidth_hz, spreading_factor, hops_taken)
);

CREATE TABLE compacted_key (
    network BIGINT NOT NULL REFERENCES network (network),
    step_microseconds BIGINT NOT NULL,
    hash BIGINT NOT NULL,
    PRIMARY KEY (network, step_microseconds, hash)
);
