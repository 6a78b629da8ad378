#!/usr/bin/env python3
"""Pushes an aircraft, an inspection and a finding, and says what became of each.

FLEETTREND_SERVER and FLEETTREND_KEY say where to and as whom; ./generate makes the modules from the protos.
A broken connection costs time and nothing else: what has no outcome is sent again, and its key keeps it from being doubled.
"""
import os
import random
import sys
import time

import grpc
from fleettrend.v1 import (aircraft_pb2, finding_pb2, inspection_pb2, intake_service_pb2, intake_service_pb2_grpc,
                           record_pb2)
from google.rpc import error_details_pb2, status_pb2
from google.type import date_pb2

FIRST_PAUSE_S, LONGEST_PAUSE_S, GIVE_UP_AFTER_S = 0.5, 30, 300
WELD = "exhaust/cyl-3/flange-weld"


def detail(details, kind):
    """The first detail of a kind, or None."""
    for one in details:
        message = kind()
        if one.Unpack(message):
            return message
    return None


def call_details(error):
    """Details of a failed call: google.rpc.Status in the trailer."""
    for name, value in error.trailing_metadata() or ():
        if name == "grpc-status-details-bin":
            return status_pb2.Status.FromString(value).details
    return ()


def push(stub, records, key):
    """Yields an outcome per record, in the order of the acknowledgements. A refusal is an outcome."""
    waiting = dict(enumerate(records))
    pause, last_outcome = FIRST_PAUSE_S, time.monotonic()
    while waiting:
        requests = (intake_service_pb2.StreamRecordsRequest(sequence=i, record=r) for i, r in list(waiting.items()))
        asked = 0.0
        try:
            for answer in stub.StreamRecords(requests, metadata=(("authorization", f"Bearer {key}"),)):
                if waiting.pop(answer.sequence, None) is not None:
                    pause, last_outcome = FIRST_PAUSE_S, time.monotonic()
                    yield answer.outcome
        except grpc.RpcError as broken:
            retry = detail(call_details(broken), error_details_pb2.RetryInfo)
            may_pass = broken.code() in (grpc.StatusCode.UNAVAILABLE, grpc.StatusCode.CANCELLED) or retry is not None
            if not may_pass or time.monotonic() - last_outcome > GIVE_UP_AFTER_S:
                raise
            asked = retry.retry_delay.ToTimedelta().total_seconds() if retry is not None else 0.0
        if waiting:
            time.sleep(max(asked, pause * random.uniform(0.5, 1)))
            pause = min(LONGEST_PAUSE_S, pause * 2)


def date(year, month, day):
    return date_pb2.Date(year=year, month=month, day=day)


def record(identifier, **content):
    """The identifier is yours; made once and kept, it makes a push repeatable."""
    return record_pb2.Record(key=record_pb2.RecordKey(source="shop-cards", source_record_id=identifier, revision=1), **content)


def records():
    yield record("aircraft ZZ-A01", aircraft=aircraft_pb2.Aircraft(
        registration="ZZ-A01", watch_start_date=date(2025, 1, 1),
        assignments=[aircraft_pb2.Assignment(from_date=date(2025, 1, 1), base="North", type_group="trainer-four")]))
    yield record("card 17", inspection=inspection_pb2.Inspection(
        registration="ZZ-A01", inspection_date=date(2026, 2, 3), time_in_service_hours=812.4,
        occasion=inspection_pb2.OCCASION_HUNDRED_HOUR,
        # A line for every location of the worksheet, the good ones too; two are enough to show it.
        looks=[inspection_pb2.LocationLook(location=WELD, state=inspection_pb2.LOOK_STATE_EXAMINED,
                                           method=inspection_pb2.LOOK_METHOD_VISUAL),
               inspection_pb2.LocationLook(location="exhaust/cyl-4/gasket", state=inspection_pb2.LOOK_STATE_COULD_NOT_EXAMINE)]))
    yield record("card 17/1", finding=finding_pb2.Finding(
        registration="ZZ-A01", location=WELD, found_date=date(2026, 2, 3), time_in_service_hours=812.4,
        condition=finding_pb2.CONDITION_CRACK, size_mm=4.5))


def channel_to(address):
    scheme, _, target = address.partition("://")
    return grpc.secure_channel(target, grpc.ssl_channel_credentials()) if scheme == "https" else grpc.insecure_channel(target)


def main():
    refused = 0
    with channel_to(os.environ.get("FLEETTREND_SERVER", "http://127.0.0.1:5081")) as channel:
        stub = intake_service_pb2_grpc.IntakeServiceStub(channel)
        try:
            for outcome in push(stub, records(), os.environ.get("FLEETTREND_KEY", "")):
                state = record_pb2.RecordState.Name(outcome.state).removeprefix("RECORD_STATE_").capitalize()
                info = detail(outcome.error.details, error_details_pb2.ErrorInfo)
                print(f"{outcome.key.source_record_id}: {state} {info.reason if info else ''} {outcome.error.message}".rstrip())
                refused += outcome.state == record_pb2.RECORD_STATE_REFUSED
        except grpc.RpcError as stopped:  # a key that is not taken, or a server that did not come back
            info = detail(call_details(stopped), error_details_pb2.ErrorInfo)
            print(f"{info.reason if info else ''} {stopped.code().name}: {stopped.details()}".strip(), file=sys.stderr)
            return 3
    return 1 if refused else 0


if __name__ == "__main__":
    sys.exit(main())
