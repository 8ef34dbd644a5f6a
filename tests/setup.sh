#!/usr/bin/env bash
# Installs the Debian packages that building and testing need, and only those that are missing.
set -euo pipefail

packages=(
    cmake g++ ninja-build ccache
    clang-16 clang-tidy-16 clang-format-16 libclang-rt-16-dev
    qt6-base-dev libqcustomplot-dev libqt6sql6-sqlite libqt6sql6-psql postgresql libsqlite3-dev libgl-dev
    libgtest-dev libgmock-dev librapidcheck-dev libbenchmark-dev
    libtomlplusplus-dev nlohmann-json3-dev libsodium-dev libstemmer-dev pkg-config
    python3 python3-jsonschema python3-nacl tzdata faketime
    python3-iapws python3-numpy python3-statsmodels
    poppler-utils fonts-dejavu-core
)

if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    echo "setup: not a Debian system, nothing installed. Needed, by Debian's names: ${packages[*]}" >&2
    exit 0
fi

installed=$(dpkg-query -W -f '${db:Status-Status} ${Package}\n' "${packages[@]}" 2>/dev/null \
    | sed -n 's/^installed //p' || true)
missing=()
for package in "${packages[@]}"; do
    grep -qxF -- "$package" <<<"$installed" || missing+=("$package")
done
if [ ${#missing[@]} -eq 0 ]; then
    exit 0
fi

as_root=()
if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null; then
        echo "setup: please install as root: apt-get install ${missing[*]}" >&2
        exit 1
    fi
    as_root=(sudo)
fi
echo "setup: installing ${missing[*]}"
export DEBIAN_FRONTEND=noninteractive
"${as_root[@]}" apt-get update -qq
"${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
