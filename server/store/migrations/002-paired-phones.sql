-- Phones that may use the bench over the network. The token itself is nowhere but in the phone's cookie.
create table paired_phone (
  id text primary key,
  token_hash blob not null unique, -- SHA-256 of the token's 32 random bytes
  paired_at text not null,
  expires_at text not null
) strict;
