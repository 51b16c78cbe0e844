# Builds and runs the board. Data lives in the volume /data, owned by the user the program runs as.
FROM mcr.microsoft.com/dotnet/sdk:10.0.401 AS build
WORKDIR /source
COPY src/Directory.Build.props src/Directory.Packages.props src/
COPY src/JobBoard.Engineering/*.csproj src/JobBoard.Engineering/packages.lock.json src/JobBoard.Engineering/
COPY src/JobBoard.Scheduling/*.csproj src/JobBoard.Scheduling/packages.lock.json src/JobBoard.Scheduling/
COPY src/JobBoard.Domain/*.csproj src/JobBoard.Domain/packages.lock.json src/JobBoard.Domain/
COPY src/JobBoard.Storage/*.csproj src/JobBoard.Storage/packages.lock.json src/JobBoard.Storage/
COPY src/JobBoard.Shop/*.csproj src/JobBoard.Shop/packages.lock.json src/JobBoard.Shop/
COPY src/JobBoard.Web/*.csproj src/JobBoard.Web/packages.lock.json src/JobBoard.Web/
RUN dotnet restore src/JobBoard.Web/JobBoard.Web.csproj --locked-mode
COPY .editorconfig .
COPY src src
COPY seed-data seed-data
RUN dotnet publish src/JobBoard.Web/JobBoard.Web.csproj -c Release -r linux-x64 --no-self-contained -o /out

FROM mcr.microsoft.com/dotnet/aspnet:10.0.12-noble
RUN groupadd --system --gid 10001 board && useradd --system --uid 10001 --gid board --home-dir /data board \
 && mkdir /data && chown board:board /data
COPY --from=build /out /program
USER board
WORKDIR /data
VOLUME /data
EXPOSE 5080
HEALTHCHECK --interval=30s --timeout=5s --start-period=20s CMD ["dotnet", "/program/jobboard.dll", "health", "--listen", "http://127.0.0.1:5080"]
ENTRYPOINT ["dotnet", "/program/jobboard.dll", "serve", "--data", "/data", "--listen", "http://0.0.0.0:5080"]
