# Sourced by the scripts beside it: finds what they need and installs what is missing, saying so.
# Nothing is fetched when everything is there.
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1
export DOTNET_CLI_WORKLOAD_UPDATE_NOTIFY_DISABLE=1

as_root() {
    if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}

# apt_install WHY PACKAGE...
apt_install() {
    local why=$1
    shift
    if ! command -v apt-get >/dev/null; then
        echo "Missing: $why. Install it with this system's package manager (Debian's name: $*)." >&2
        return 1
    fi
    echo "Installing $* with apt-get: $why."
    local log
    log=$(mktemp)
    # env goes through sudo, which drops variables.
    if as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "$@" >"$log" 2>&1 </dev/null \
        || { as_root apt-get update -q >>"$log" 2>&1 </dev/null \
            && as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "$@" >>"$log" 2>&1 </dev/null; }; then
        rm -f "$log"
    else
        tail -15 "$log" >&2
        rm -f "$log"
        echo "apt-get could not install: $*" >&2
        return 1
    fi
}

has_postgres() {
    local folder
    IFS=: read -r -a folders <<<"$PATH"
    for folder in "${folders[@]}" /usr/lib/postgresql/*/bin /usr/pgsql-*/bin /usr/local/pgsql/bin; do
        [ -x "$folder/initdb" ] && [ -x "$folder/pg_ctl" ] && [ -x "$folder/postgres" ] && return 0
    done
    return 1
}

require_postgres() {
    has_postgres || apt_install "the PostgreSQL server programs" postgresql
}

require_chromium() {
    [ -n "${FLEETTREND_TEST_CHROMIUM:-}" ] || [ -x /usr/bin/chromium ] || apt_install "Chromium, which the browser tests drive" chromium
}

require_dotnet() {
    if ! command -v dotnet >/dev/null; then
        for folder in "${DOTNET_ROOT:-}" "$HOME/.dotnet" /usr/share/dotnet /usr/lib/dotnet; do
            if [ -n "$folder" ] && [ -x "$folder/dotnet" ]; then
                export PATH=$folder:$PATH
                break
            fi
        done
    fi
    if ! command -v dotnet >/dev/null; then
        echo "The .NET 10 SDK is missing: https://dotnet.microsoft.com/download" >&2
        return 1
    fi
    # What the SDK needs of the system and does not bring: a bare Debian has none of it.
    if command -v apt-get >/dev/null; then
        compgen -G '/usr/lib/*/libssl.so.3' >/dev/null || apt_install "TLS, for .NET" libssl3 || return 1
        [ -n "${SSL_CERT_FILE:-}" ] || [ -e /etc/ssl/certs/ca-certificates.crt ] \
            || apt_install "certificates, to fetch packages" ca-certificates || return 1
    fi
    # Without ICU it ends at once; nothing here needs it.
    dotnet --version >/dev/null 2>&1 || export DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=1
    dotnet --version >/dev/null || { echo "dotnet does not start here; the lines above say why." >&2; return 1; }
}
