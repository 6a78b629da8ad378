# The worker: background jobs, weekly report, mail; health on 5082.
# Build from the root of the tree: docker build -f deploy/worker.Dockerfile -t fleettrend-worker .
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
COPY --from=build /publish/Worker /app
COPY deploy/healthcheck.sh /app/healthcheck.sh
ENV FLEETTREND_WORKER_ADDRESS=*:5082 FLEETTREND_DATA=/data
VOLUME /data
EXPOSE 5082
USER 1654
HEALTHCHECK --interval=5s --timeout=6s --start-period=60s --retries=3 CMD ["bash", "/app/healthcheck.sh", "5082"]
ENTRYPOINT ["dotnet", "/app/FleetTrend.Worker.dll"]
