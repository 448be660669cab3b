using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;
using StackExchange.Redis;

namespace Heaveline.Tests.Cluster;

/// <summary>A database server of a test's own, on this machine alone, gone with the test.</summary>
internal sealed class OwnServer : IDisposable
{
    private readonly DirectoryInfo folder;
    private readonly List<Process> started = [];

    private OwnServer(int port)
    {
        Port = port;
        folder = Directory.CreateTempSubdirectory("heaveline-server-");
    }

    public int Port { get; }

    public static Task<OwnServer> Redis() => Started(server =>
    {
        server.Start(
            Found("redis-server"), "--port", $"{server.Port}", "--bind", "127.0.0.1", "--save", "", "--appendonly", "no",
            "--dir", server.folder.FullName);
        return async () => await (await ConnectionMultiplexer.ConnectAsync($"127.0.0.1:{server.Port}")).DisposeAsync();
    });

    // PostgreSQL will not be run by root: by nobody then.
    public static Task<OwnServer> Postgres() => Started(server =>
    {
        var data = server.folder.FullName;
        string[] by = [];
        if (Environment.UserName == "root")
        {
            Assert.Equal(0, Ended(Process.Start("chown", ["nobody", data])));
            by = ["runuser", "-u", "nobody", "--"];
        }

        string[] made = [.. by, Found("initdb"), "-D", data, "-U", "heaveline", "-A", "trust", "--no-sync", "--no-locale", "-E", "UTF8"];
        Assert.Equal(0, Ended(server.Start(made[0], made[1..])));
        string[] line =
        [
            .. by, Found("postgres"), "-D", data, "-p", $"{server.Port}", "-h", "127.0.0.1", "-k", data, "-c", "fsync=off",
            "-c", "max_connections=60",
        ];
        server.Start(line[0], line[1..]);
        // It listens before it lets anybody in.
        return async () =>
        {
            await using var session = new NpgsqlConnection($"Host=127.0.0.1;Port={server.Port};Username=heaveline;Database=postgres;Pooling=false");
            await session.OpenAsync();
        };
    });

    public void Dispose()
    {
        // Whatever was started by another user is ended by its own number.
        var noted = Path.Combine(folder.FullName, "postmaster.pid");
        if (File.Exists(noted))
        {
            Ended(Process.Start("kill", ["-INT", File.ReadLines(noted).First()]));
        }

        foreach (var process in started)
        {
            if (!process.WaitForExit(File.Exists(noted) ? 10_000 : 0))
            {
                process.Kill(entireProcessTree: true);
                process.WaitForExit();
            }

            process.Dispose();
        }

        folder.Delete(recursive: true);
    }

    private Process Start(string program, params string[] words)
    {
        var process = Process.Start(new ProcessStartInfo(program, words)
        {
            WorkingDirectory = folder.FullName, RedirectStandardOutput = true, RedirectStandardError = true,
        })!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        started.Add(process);
        return process;
    }

    // Between finding a free port and listening at it another may take it: then the server ends at once, and is started at another one.
    private static async Task<OwnServer> Started(Func<OwnServer, Func<Task>> start)
    {
        for (var again = 0; ; again++)
        {
            var server = new OwnServer(FreePort());
            if (await server.Answers(start(server)))
            {
                return server;
            }

            server.Dispose();
            Assert.True(again < 5, "No server of its own could be started.");
        }
    }

    private async Task<bool> Answers(Func<Task> ask)
    {
        for (var k = 0; !started[^1].HasExited; k++)
        {
            try
            {
                await ask();
                return !started[^1].HasExited;
            }
            catch (Exception silence) when (k < 1200 && silence is SocketException or NpgsqlException or RedisException)
            {
                await Task.Delay(100, TestContext.Current.CancellationToken);
            }
        }

        return false;
    }

    private static int Ended(Process process)
    {
        process.WaitForExit();
        return process.ExitCode;
    }

    // Debian keeps PostgreSQL's programs out of the path.
    private static string Found(string name)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Append("/usr/bin").Append("/usr/local/bin")
            .Concat(Directory.Exists("/usr/lib/postgresql")
                ? Directory.EnumerateDirectories("/usr/lib/postgresql").Select(version => Path.Combine(version, "bin"))
                : []);
        return folders.Select(at => Path.Combine(at, name)).FirstOrDefault(File.Exists)
            ?? throw new FileNotFoundException(
                string.Create(CultureInfo.InvariantCulture, $"{name} is not on this machine: eng/servers.sh says what must be installed."));
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
