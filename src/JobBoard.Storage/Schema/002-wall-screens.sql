-- How far a wall's screen is looked at from, and how large it is: text on it is sized by that. A link without a row has the usual ones.
CREATE TABLE wall_screens
(
    token_id TEXT NOT NULL PRIMARY KEY REFERENCES tokens (id),
    metres   REAL NOT NULL CHECK (metres > 0),
    inches   REAL NOT NULL CHECK (inches > 0)
) STRICT, WITHOUT ROWID;
