using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

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

    public static async Task<OwnServer> Redis()
    {
        var server = new OwnServer(FreePort());
        server.Start(
            Found("redis-server"), "--port", $"{server.Port}", "--bind", "127.0.0.1", "--save", "", "--appendonly", "no",
            "--dir", server.folder.FullName);
        await server.Answers();
        return server;
    }

    // PostgreSQL will not be run by root: by nobody then.
    public static async Task<OwnServer> Postgres()
    {
        var server = new OwnServer(FreePort());
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
        await server.Answers();
        return server;
    }

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

    private async Task Answers()
    {
        for (var k = 0; ; k++)
        {
            try
            {
                using var client = new TcpClient();
                await client.ConnectAsync(IPAddress.Loopback, Port, TestContext.Current.CancellationToken);
                return;
            }
            catch (SocketException) when (k < 300 && !started[^1].HasExited)
            {
                await Task.Delay(100, TestContext.Current.CancellationToken);
            }
        }
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
