-- Which car a customer's link is about.
CREATE TABLE customer_links
(
    token_id TEXT NOT NULL PRIMARY KEY REFERENCES tokens (id),
    car      TEXT NOT NULL
) STRICT, WITHOUT ROWID;
