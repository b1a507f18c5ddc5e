-- What stands: one document an identity. A record's identity is truck and day, an event's its id.
CREATE TABLE document (
    kind TEXT NOT NULL,
    identity TEXT NOT NULL,
    truck TEXT,
    day TEXT NOT NULL,
    content TEXT NOT NULL,
    sha256 TEXT NOT NULL,
    text TEXT NOT NULL,
    PRIMARY KEY (kind, identity)
);
CREATE INDEX document_of_truck ON document (truck);
-- What stood once: each with the content that took its place, and why.
CREATE TABLE replaced (
    kind TEXT NOT NULL,
    identity TEXT NOT NULL,
    truck TEXT,
    day TEXT NOT NULL,
    content TEXT NOT NULL,
    sha256 TEXT NOT NULL,
    text TEXT NOT NULL,
    replaced_by TEXT NOT NULL,
    why TEXT NOT NULL,
    PRIMARY KEY (kind, identity, sha256, replaced_by, why)
);
