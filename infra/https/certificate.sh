#!/usr/bin/env bash
# A certificate of the yard's own, so that phones keep the board and work without signal: browsers allow that over HTTPS only.
#
#   infra/https/certificate.sh FOLDER NAME...        NAME: what phones type, such as stokehold.local or 192.168.7.20
#
# makes in FOLDER   yard-ca.crt  to be put on each phone, once    house.crt, house.key  for the house
#                   yard-ca.key  stays here: whoever has it can make certificates that these phones trust
# Run it again to renew house.crt (it lasts 800 days): the yard-ca.crt on the phones stays good for ten years.
# Needs: openssl 1.1.1 or newer.
set -euo pipefail
umask 077

# What the yard's authority may speak for: a yard's own network, and nothing of the internet.
PRIVATE_NAMES='localhost local lan home.arpa internal'
PRIVATE_RANGES='10.0.0.0/255.0.0.0 172.16.0.0/255.240.0.0 192.168.0.0/255.255.0.0 169.254.0.0/255.255.0.0 127.0.0.0/255.0.0.0'

refuse() {
  echo "$1" >&2
  exit 1
}
is_address() { [[ $1 =~ ^[0-9]+\.[0-9]+\.[0-9]+\.[0-9]+$ ]]; }
is_private_address() { [[ $1 =~ ^(10|127)\. || $1 =~ ^192\.168\. || $1 =~ ^169\.254\. || $1 =~ ^172\.(1[6-9]|2[0-9]|3[01])\. ]]; }
is_private_name() {
  local end
  for end in $PRIVATE_NAMES; do [[ $1 == "$end" || $1 == *."$end" ]] && return 0; done
  return 1
}

[ $# -ge 2 ] || refuse "Give the folder and at least one name or address, such as: $0 data/https stokehold.local 192.168.7.20"
command -v openssl >/dev/null || refuse 'openssl was not found. Debian: apt-get install openssl'
folder=$1
shift
names=''
for name in "$@"; do
  if is_address "$name"; then
    is_private_address "$name" || refuse "$name is an address of the internet. Give the house's address in the yard's own network."
    names+=",IP:$name"
  else
    is_private_name "$name" || refuse "$name is not a name of a yard's own network. Give one that ends in .local, .lan, .home.arpa or .internal, or an address."
    names+=",DNS:$name"
  fi
done
mkdir -p "$folder"

if [ ! -e "$folder/yard-ca.key" ]; then
  permitted=''
  for end in $PRIVATE_NAMES; do permitted+=",permitted;DNS:$end"; done
  for range in $PRIVATE_RANGES; do permitted+=",permitted;IP:$range"; done
  openssl ecparam -name prime256v1 -genkey -noout -out "$folder/yard-ca.key"
  openssl req -x509 -new -sha256 -days 3650 -key "$folder/yard-ca.key" -subj '/CN=Stokehold yard authority' -out "$folder/yard-ca.crt" \
    -addext 'basicConstraints=critical,CA:TRUE,pathlen:0' -addext 'keyUsage=critical,keyCertSign,cRLSign' -addext "nameConstraints=critical${permitted}"
fi

request=$(mktemp)
extensions=$(mktemp)
trap 'rm -f "$request" "$extensions"' EXIT
printf '%s\n' 'basicConstraints=critical,CA:FALSE' 'keyUsage=critical,digitalSignature' 'extendedKeyUsage=serverAuth' "subjectAltName=${names#,}" >"$extensions"
openssl ecparam -name prime256v1 -genkey -noout -out "$folder/house.key"
openssl req -new -sha256 -key "$folder/house.key" -subj "/CN=Stokehold" -out "$request"
openssl x509 -req -sha256 -days 800 -in "$request" -CA "$folder/yard-ca.crt" -CAkey "$folder/yard-ca.key" -set_serial "0x$(openssl rand -hex 16)" \
  -extfile "$extensions" -out "$folder/house.crt" 2>/dev/null
chmod 644 "$folder/yard-ca.crt" "$folder/house.crt"

cat <<END
Made in $folder. Open the house with it:
    STOKEHOLD_CERTIFICATE=$folder/house.crt STOKEHOLD_KEY=$folder/house.key npm start
Put $folder/yard-ca.crt on each phone and board (infra/https/README.md says how), and compare there:
    $(openssl x509 -in "$folder/yard-ca.crt" -noout -fingerprint -sha256)
END
