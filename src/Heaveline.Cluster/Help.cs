using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using Heaveline.Passes;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Heaveline.Cluster;

/// <summary>Lends this machine to a study, until it ends, is gone for ten seconds, or somebody stops it.</summary>
public static class Help
{
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(1.0);
    private static readonly TimeSpan Answered = TimeSpan.FromSeconds(3.0);
    private static readonly TimeSpan MostSilence = TimeSpan.FromSeconds(10.0);
    private static readonly TimeSpan Knocked = TimeSpan.FromSeconds(10.0);

    // So often in a row nobody listened: a moment is not taken for the end.
    private const int MostRefused = 3;

    /// <summary>Helps.</summary>
    /// <param name="asked">Which study.</param>
    /// <param name="say">Told how it goes, a sentence.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RunFailedException">The study is not there, the code is another one, or it will not have this machine.</exception>
    public static async Task<HelpEnd> Out(HelpAsked asked, Action<string> say, CancellationToken stop)
    {
        var keys = StudyCode.Keys(asked.Code, TimeProvider.System.GetUtcNow());
        using var certificate = keys.Certificate;
        var study = await Knock(asked, certificate, stop).ConfigureAwait(false);
        var own = Ports.Free(new IPEndPoint(Ports.Towards(study), 0));
        using var work = new SlotWork(asked.Threads);
        var alarm = new StudyAlarm();
        var host = Silos.Of(own, study, keys, asked.Membership, asked.MostMissed, work, alarm, null);
        try
        {
            return await Joined(host, study, stop).ConfigureAwait(false)
                ? await At(asked, host, study, work, alarm, say, stop).ConfigureAwait(false)
                : HelpEnd.Missed;
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return HelpEnd.Stopped;
        }
        finally
        {
            await Ending.Of(host, () => Task.CompletedTask).ConfigureAwait(false);
        }
    }

    // Joining may take half a minute; where meanwhile nobody listens there any more, nobody will let this machine in.
    private static async Task<bool> Joined(IHost host, IPEndPoint study, CancellationToken stop)
    {
        using var left = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var start = host.StartAsync(left.Token);
        for (var silent = 0; await Task.WhenAny(start, Task.Delay(Look, stop)).ConfigureAwait(false) != start;)
        {
            stop.ThrowIfCancellationRequested();
            silent = await Listens(study, stop).ConfigureAwait(false) ? 0 : silent + 1;
            if (silent >= MostRefused)
            {
                await left.CancelAsync().ConfigureAwait(false);
                // How the start that nobody waits for ended is nobody's business.
                _ = start.ContinueWith(ended => ended.Exception, TaskScheduler.Default);
                return false;
            }
        }

        try
        {
            await start.ConfigureAwait(false);
            return true;
        }
        catch (Exception failure) when (failure is not OperationCanceledException || !stop.IsCancellationRequested)
        {
            if (!await Listens(study, stop).ConfigureAwait(false))
            {
                return false;
            }

            throw new RunFailedException(
                $"This machine could not join the study at {study}: {failure.GetBaseException().Message}",
                "Look whether the machine of the study reaches this one too, through its firewall.");
        }
    }

    private static async Task<HelpEnd> At(
        HelpAsked asked, IHost host, IPEndPoint study, SlotWork work, StudyAlarm alarm, Action<string> say, CancellationToken stop)
    {
        var desk = new DeskFar(host, study);
        var silo = host.Services.GetRequiredService<ILocalSiloDetails>().SiloAddress.ToParsableString();
        var seen = Environment.TickCount64;
        var (hasHeard, tried) = (false, (Task<Tried>?)null);
        try
        {
            while (!alarm.IsRaised && Environment.TickCount64 - seen < MostSilence.TotalMilliseconds)
            {
                try
                {
                    var state = await Heard(() => desk.State(silo), stop).ConfigureAwait(false);
                    (seen, hasHeard) = (Environment.TickCount64, true);
                    if (state == StudyState.Over)
                    {
                        return HelpEnd.Over;
                    }

                    // While the piece that is offered is done here it goes on listening: the study may end meanwhile.
                    if (state == StudyState.GivenUp && (tried ??= Try(asked, desk, work, say, stop)).IsCompleted)
                    {
                        var done = tried;
                        tried = null;
                        await Enter(asked, desk, silo, await done.ConfigureAwait(false), say, stop).ConfigureAwait(false);
                    }
                }
                catch (Silence)
                {
                    // It may answer the next time.
                    if (!hasHeard && !await Listens(study, stop).ConfigureAwait(false))
                    {
                        return HelpEnd.Missed;
                    }
                }

                await Task.Delay(Look, stop).ConfigureAwait(false);
            }

            return hasHeard ? HelpEnd.Gone : HelpEnd.Missed;
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            await Goodbye(desk, silo).ConfigureAwait(false);
            throw;
        }
        finally
        {
            // Whoever reads the study has its files open; a piece that is long is not waited for.
            await Task.WhenAny(tried ?? Task.CompletedTask, Task.Delay(Answered, CancellationToken.None)).ConfigureAwait(false);
        }
    }

    // The study is read once, however often this machine asks. What its work itself throws is no silence: it ends the help, in its own words.
    private static async Task<Tried> Try(HelpAsked asked, DeskFar desk, SlotWork work, Action<string> say, CancellationToken stop)
    {
        var offer = await Heard(() => desk.Ask(asked.Machine, asked.Program), stop).ConfigureAwait(false);
        if (offer.Refusal.Length > 0)
        {
            throw new RunFailedException(PlainWords.Sentence(offer.Refusal), "");
        }

        if (offer.Piece.Length == 0)
        {
            return new Tried(null);
        }

        if (!work.IsReady)
        {
            say("Joining: a piece whose answer is known is done here first.");
            work.Begin(await Task.Run(() => asked.Reads(offer.Texts, offer.Hash), stop).ConfigureAwait(false));
        }

        // What is slow the first time is not counted as silence of anybody.
        return new Tried(await work.Do(offer.Piece).ConfigureAwait(false));
    }

    private static async Task Enter(HelpAsked asked, DeskFar desk, string silo, Tried tried, Action<string> say, CancellationToken stop)
    {
        if (tried.Answer is not { } answer)
        {
            return;
        }

        var refusal = await Heard(() => desk.Enter(silo, asked.Machine, asked.Threads, answer), stop).ConfigureAwait(false);
        if (refusal.Length > 0)
        {
            throw new RunFailedException(PlainWords.Sentence(refusal), "");
        }

        say($"Helping, on {asked.Threads} {(asked.Threads == 1 ? "thread" : "threads")}. Ctrl+C leaves; the study goes on without this machine.");
    }

    // An answer of the desk.
    private static async Task<T> Heard<T>(Func<Task<T>> call, CancellationToken stop)
    {
        try
        {
            return await call().WaitAsync(Answered, stop).ConfigureAwait(false);
        }
        catch (Exception silence)
            when (silence is TimeoutException or OrleansException or SocketException or IOException or InvalidOperationException)
        {
            throw new Silence(silence);
        }
    }

    private static async Task Goodbye(DeskFar desk, string silo)
    {
        try
        {
            await desk.Leave(silo).WaitAsync(Answered).ConfigureAwait(false);
        }
        catch (Exception silence) when (silence is TimeoutException or OrleansException or InvalidOperationException)
        {
            // The study finds out by itself.
        }
    }

    // Before this machine joins anything: whether the other is there, and whether both have one code.
    private static async Task<IPEndPoint> Knock(HelpAsked asked, X509Certificate2 own, CancellationToken stop)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(Knocked);
        using var socket = new TcpClient();
        try
        {
            await socket.ConnectAsync(asked.Host, asked.Port, patience.Token).ConfigureAwait(false);
            var at = (IPEndPoint)socket.Client.RemoteEndPoint!;
            using var secured = new SslStream(socket.GetStream(), false);
            await secured.AuthenticateAsClientAsync(
                new SslClientAuthenticationOptions
                {
                    TargetHost = "heaveline",
                    EnabledSslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13,
                    ClientCertificates = [own],
                    RemoteCertificateValidationCallback = (_, other, _, _) => StudyCode.IsSame(other as X509Certificate2, own),
                },
                patience.Token).ConfigureAwait(false);
            return new IPEndPoint(at.Address.IsIPv4MappedToIPv6 ? at.Address.MapToIPv4() : at.Address, at.Port);
        }
        catch (AuthenticationException)
        {
            throw new RunFailedException(
                $"What answers at {asked.Host}:{asked.Port} is a study that has another code, or another program.",
                "Type place and code as they stand in the terminal of the study.");
        }
        catch (Exception silence)
            when (silence is SocketException or IOException || (silence is OperationCanceledException && !stop.IsCancellationRequested))
        {
            throw new RunFailedException(
                $"No study answers at {asked.Host}:{asked.Port}{(silence is SocketException refused ? $" ({refused.Message})" : "")}.",
                "Look whether it runs, whether it was opened to this machine, and whether a firewall stands between.");
        }
    }

    // Whether anybody listens there: not who.
    private static async Task<bool> Listens(IPEndPoint study, CancellationToken stop)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(Answered);
        using var socket = new TcpClient(study.AddressFamily);
        try
        {
            await socket.ConnectAsync(study, patience.Token).ConfigureAwait(false);
            return true;
        }
        catch (Exception refused) when (refused is SocketException || (refused is OperationCanceledException && !stop.IsCancellationRequested))
        {
            return false;
        }
    }

    // What came of the piece that was offered; null where none was.
    private sealed record Tried(byte[]? Answer);

    private sealed class Silence(Exception why) : Exception(why.Message, why);
}
