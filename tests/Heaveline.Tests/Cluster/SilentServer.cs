using System.Net;
using System.Net.Sockets;

namespace Heaveline.Tests.Cluster;

/// <summary>A server that takes every call and hangs up at once.</summary>
internal sealed class SilentServer : IDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private int calls;

    public SilentServer()
    {
        listener.Start();
        _ = Task.Run(HangUp);
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    /// <summary>How often it was called.</summary>
    public int Calls => Volatile.Read(ref calls);

    /// <summary>Waits until it was called so often.</summary>
    public async Task IsCalled(int often)
    {
        for (var k = 0; k < 1200 && Calls < often; k++)
        {
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }

        Assert.InRange(Calls, often, int.MaxValue);
    }

    public void Dispose() => listener.Dispose();

    private async Task HangUp()
    {
        try
        {
            while (true)
            {
                using var call = await listener.AcceptTcpClientAsync();
                Interlocked.Increment(ref calls);
            }
        }
        catch (Exception over) when (over is SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }
}
