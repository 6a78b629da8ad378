#!/usr/bin/env bash
# Pushes an aircraft, an inspection and a finding as JSON, and prints the answer: an outcome per record, in the order sent.
# FLEETTREND_JSON and FLEETTREND_KEY say where to and as whom. The key comes from the environment into curl's standard input:
# as an argument others on the machine could read it.
set -euo pipefail
server=${FLEETTREND_JSON:-http://127.0.0.1:5080}

curl -sS --fail-with-body --retry 5 --retry-connrefused -H @- -H 'Content-Type: application/json' "$server/v1/records:push" \
    -d '{
  "records": [
    {
      "key": {"source": "shop-cards", "sourceRecordId": "aircraft ZZ-A01", "revision": 1},
      "aircraft": {
        "registration": "ZZ-A01",
        "watchStartDate": {"year": 2025, "month": 1, "day": 1},
        "assignments": [{"fromDate": {"year": 2025, "month": 1, "day": 1}, "base": "North", "typeGroup": "trainer-four"}]
      }
    },
    {
      "key": {"source": "shop-cards", "sourceRecordId": "card 17", "revision": 1},
      "inspection": {
        "registration": "ZZ-A01",
        "inspectionDate": {"year": 2026, "month": 2, "day": 3},
        "timeInServiceHours": 812.4,
        "occasion": "OCCASION_HUNDRED_HOUR",
        "looks": [
          {"location": "exhaust/cyl-3/flange-weld", "state": "LOOK_STATE_EXAMINED", "method": "LOOK_METHOD_VISUAL"},
          {"location": "exhaust/cyl-4/gasket", "state": "LOOK_STATE_COULD_NOT_EXAMINE"}
        ]
      }
    },
    {
      "key": {"source": "shop-cards", "sourceRecordId": "card 17/1", "revision": 1},
      "finding": {
        "registration": "ZZ-A01",
        "location": "exhaust/cyl-3/flange-weld",
        "foundDate": {"year": 2026, "month": 2, "day": 3},
        "timeInServiceHours": 812.4,
        "condition": "CONDITION_CRACK",
        "sizeMm": 4.5
      }
    }
  ]
}' <<<"authorization: Bearer ${FLEETTREND_KEY:-}"
echo
