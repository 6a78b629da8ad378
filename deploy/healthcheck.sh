#!/usr/bin/env bash
# Asks the process in this container whether it is ready, without curl: the runtime images have none.
# Usage: healthcheck.sh PORT
exec 3<>"/dev/tcp/127.0.0.1/$1" || exit 1
printf 'GET /health/ready HTTP/1.0\r\nHost: localhost\r\n\r\n' >&3
read -r -t 5 _ status _ <&3
[ "$status" = 200 ]
