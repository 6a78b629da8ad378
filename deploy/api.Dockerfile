# The API: gRPC on 5081, pages, JSON and health on 5080; on 5083, for this container alone, health without TLS.
# It starts only with a certificate or with FLEETTREND_ALLOW_PLAIN_TEXT=true.
# Build from the root of the tree: docker build -f deploy/api.Dockerfile -t fleettrend-api .
ARG SDK_IMAGE=mcr.microsoft.com/dotnet/sdk:10.0
ARG RUNTIME_IMAGE=mcr.microsoft.com/dotnet/aspnet:10.0

FROM ${SDK_IMAGE} AS build
WORKDIR /tree
COPY Directory.Build.props Directory.Packages.props global.json .editorconfig ./
COPY protos protos
COPY src src
# Both hosts, in both files: the second image finds this step done. Analyzers run where code is changed, not here.
RUN for host in Api Worker; do \
        dotnet publish src/FleetTrend.$host -c Release -o /publish/$host -p:RunAnalyzers=false -nologo || exit 1; \
    done

FROM ${RUNTIME_IMAGE}
# The account "app" (1654) of the public image; made here for base images that lack it.
RUN id -u 1654 >/dev/null 2>&1 || useradd --uid 1654 --no-create-home --shell /bin/false app; \
    mkdir -p /data && chown 1654:1654 /data
COPY --from=build /publish/Api /app
COPY deploy/healthcheck.sh /app/healthcheck.sh
ENV FLEETTREND_HTTP_ADDRESS=*:5080 FLEETTREND_GRPC_ADDRESS=*:5081 FLEETTREND_LOCAL_ADDRESS=127.0.0.1:5083 \
    FLEETTREND_DATA=/data
VOLUME /data
EXPOSE 5080 5081
USER 1654
HEALTHCHECK --interval=5s --timeout=6s --start-period=60s --retries=3 CMD ["bash", "/app/healthcheck.sh", "5083"]
ENTRYPOINT ["dotnet", "/app/FleetTrend.Api.dll"]
