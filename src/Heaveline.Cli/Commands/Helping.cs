using System.Globalization;
using System.Net;
using Heaveline.Cli.Output;
using Heaveline.Cluster;
using Heaveline.Files;
using Heaveline.Files.Keeping;
using Heaveline.Passes;
using Heaveline.Pieces;
using Heaveline.Web.Guard;

namespace Heaveline.Cli.Commands;

/// <summary>Studies that other machines help with, and help with those of others.</summary>
internal static class Helping
{
    /// <summary>This program can.</summary>
    public static void Leave(Streams streams)
    {
    }

    /// <summary>Opens a study to whoever has its code, which is said.</summary>
    public static IPieceRun Open(
        Streams streams, PieceWays.Given ways, StudyTexts study, Action<IReadOnlyList<byte[]>> withdraw, CancellationToken stop)
    {
        var crew = ways.Crew is null ? null : Crews.Of(streams, ways.Crew).Crew;
        var (mark, code) = crew is null ? ("", StudyCode.Fresh()) : CrewStudy.Fresh(crew);
        var members = ways.Members;
        var turn = new Lock();
        void Say(string sentence)
        {
            // From several threads.
            lock (turn)
            {
                streams.Remarks.WriteLine($"heaveline: {sentence}");
            }
        }

        var place = ways.HelpAt is { } at ? EndPoint(at) : Crews.Place(crew!);
        if (crew is not null && IPAddress.IsLoopback(place.Address))
        {
            Say($"the study listens at {place.Address}, where machines of the crew other than this one do not find it: --help-at ADDRESS:PORT with "
                + "another address of this machine lets them help.");
        }

        var helped = HelpedStudy.Open(
            new HelpedAsked
            {
                At = place,
                Code = code,
                Membership = members is null ? Membership.Own : Membership.Of(members),
                Texts = study.ToBytes(),
                Hash = study.Hash,
                Program = Release.Build,
                Withdraw = withdraw,
            },
            Say,
            stop).GetAwaiter().GetResult();
        if (crew is not null)
        {
            try
            {
                var told = CrewStudy.Open(crew, mark, helped, Environment.MachineName, Release.Build, Say).GetAwaiter().GetResult();
                return new Run(helped, told, Say);
            }
            catch
            {
                helped.DisposeAsync().AsTask().GetAwaiter().GetResult();
                throw;
            }
        }

        Say($"others may help: type there  heaveline help-out {helped.At} {code}{(members is null ? "" : $" --members \"{members}\"")}");
        return new Run(helped, null, Say);
    }

    /// <summary>Helps with a study of another machine until it ends.</summary>
    public static async Task<int> Out(Streams streams, HelpOutAsked asked, CancellationToken stop)
    {
        var (host, port) = HostAndPort(asked.At);
        streams.StoppedWords = "heaveline: stopped by you; the study goes on without this machine.";
        streams.Grace = TimeSpan.FromSeconds(10.0);
        void Say(string sentence)
        {
            streams.Results.WriteLine(sentence);
            streams.Results.Flush();
        }

        Say($"Looking for the study at {asked.At}.");
        using var reader = new OwnReader(streams, stop);
        var end = await Help.Out(
            new HelpAsked
            {
                Host = host,
                Port = port,
                Code = asked.Code,
                Membership = asked.Members is null ? Membership.Own : Membership.Of(asked.Members),
                Program = Release.Build,
                Threads = asked.Threads ?? Environment.ProcessorCount,
                Reads = reader.Read,
            },
            Say,
            stop).ConfigureAwait(false);
        switch (end)
        {
            case HelpEnd.Over:
                streams.Results.WriteLine("The study has ended.");
                return ExitCode.Done;
            case HelpEnd.Gone:
                throw new Stopped(
                    $"heaveline: the study at {asked.At} has not answered for ten seconds: its machine has gone, or stands alone. This one leaves.",
                    ExitCode.NotComputed);
            case HelpEnd.Missed:
                throw new Stopped(
                    $"heaveline: the study at {asked.At} had ended, or its machine gone, before this one had joined it. This one leaves.",
                    ExitCode.NotComputed);
            default:
                throw new OperationCanceledException(stop);
        }
    }

    /// <summary>Stands by for a crew until somebody stops it.</summary>
    public static async Task<int> StandBy(Streams streams, StandByOptions asked, CancellationToken stop)
    {
        if (asked.MakesCode)
        {
            return Crews.MakeCode(streams, asked.File);
        }

        var (crew, sheet) = Crews.Of(streams, asked.File);
        streams.StoppedWords = "heaveline: stopped by you; the studies go on without this machine.";
        streams.Grace = TimeSpan.FromSeconds(15.0);
        var turn = new Lock();
        await Cluster.StandBy.For(
            new StandByAsked
            {
                Crew = crew,
                Program = Release.Build,
                Machine = asked.Name ?? Environment.MachineName,
                Threads = asked.Threads ?? sheet.Threads ?? Environment.ProcessorCount,
                Reader = () => new OwnReader(streams, stop),
            },
            sentence =>
            {
                // From several studies.
                lock (turn)
                {
                    streams.Results.WriteLine(sentence);
                    streams.Results.Flush();
                }
            },
            stop).ConfigureAwait(false);
        throw new OperationCanceledException(stop);
    }

    private static IPieceDoer Reads(Streams streams, StudyTexts study, string hash, string folder, CancellationToken stop)
    {
        if (study.Hash != hash)
        {
            throw new RunFailedException($"The texts of the study are those of {study.Hash}, not of {hash}.", "Start the study anew.");
        }

        return study.Word == ChooseStudy.Question.Word ? Reads(streams, ChooseStudy.Question, study, folder, stop)
            : study.Word == DoubtStudy.Question.Word ? Reads(streams, DoubtStudy.Question, study, folder, stop)
            : study.Word == RuleStudy.Question.Word ? Reads(streams, RuleStudy.Question, study, folder, stop)
            : throw new RunFailedException($"The study is a '{study.Word}', which does not come in pieces here.", "Take the program of the study.");
    }

    private static IPieceDoer Reads<TAsked, TAnswer>(
        Streams streams, Question<TAsked, TAnswer> question, StudyTexts study, string folder, CancellationToken stop)
        where TAsked : class
        where TAnswer : class
    {
        var reading = question.Read(study.In(folder), new FileFinder(streams, stop));
        ChoiceInputs.Stop([.. reading.Objections]);
        return question.Pieces!(reading.Asked!);
    }

    private static IPEndPoint EndPoint(string at)
    {
        if (int.TryParse(at, NumberStyles.None, CultureInfo.InvariantCulture, out var alone) && alone <= IPEndPoint.MaxPort)
        {
            return new IPEndPoint(IPAddress.Loopback, alone);
        }

        if (!at.Contains(':', StringComparison.Ordinal) || !IPEndPoint.TryParse(at, out var given) || MachineAddress.IsAll(given.Address))
        {
            throw new Stopped(
                $"heaveline: --help-at {at}: give a port, for others at this machine, or one of its addresses and a port, for instance "
                + "192.168.1.20:5091.",
                ExitCode.WrongUsage);
        }

        if (!IPAddress.IsLoopback(given.Address) && !MachineAddress.All().Contains(given.Address))
        {
            var own = MachineAddress.Reached(IPAddress.IPv6Any);
            throw new Stopped(
                $"heaveline: --help-at {at}: no address of this machine; it has "
                + $"{(own.Count > 0 ? string.Join(", ", own) : "none that others reach: it is in no network")}.",
                ExitCode.WrongUsage);
        }

        return given;
    }

    private static (string Host, int Port) HostAndPort(string at)
    {
        var colon = at.LastIndexOf(':');
        return colon > 0 && int.TryParse(at.AsSpan(colon + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var port)
            && port is > 0 and <= IPEndPoint.MaxPort && !at.AsSpan(0, colon).ContainsAny("/ @?#")
            ? (at[..colon].Trim('[', ']'), port)
            : throw new Stopped(
                $"heaveline: '{at}' is no place of a study: type it as it stands there, for instance 192.168.1.20:5091.", ExitCode.WrongUsage);
    }

    private sealed class Run(HelpedStudy helped, CrewStudy? told, Action<string> say) : IPieceRun
    {
        public int PiecesAtOnce => HelpedStudy.PiecesAtOnce;

        public IPieceDoer Through(IPieceDoer doer) => helped.Through(doer);

        public void Say() => say(helped.Helped is { Count: > 0 } all
            ? $"helped by {string.Join(", ", all.Select(one => $"'{one.Machine}' ({one.Pieces} {(one.Pieces == 1 ? "piece" : "pieces")})"))}."
            : "nobody has helped.");

        public void Dispose()
        {
            // First it is noted no more, so that nobody joins what has ended.
            told?.DisposeAsync().AsTask().GetAwaiter().GetResult();
            helped.DisposeAsync().AsTask().GetAwaiter().GetResult();
        }
    }

    // Where the files of the study lie while this machine helps: nobody else reads them.
    private sealed class OwnReader(Streams streams, CancellationToken stop) : IStudyReader
    {
        private readonly Lock turn = new();
        private string? folder;
        private bool isOver;

        public IPieceDoer Read(byte[] texts, string hash)
        {
            lock (turn)
            {
                // Who is left while the texts are on their way here reads them no more.
                ObjectDisposedException.ThrowIf(isOver, this);
                try
                {
                    folder ??= Directory.CreateTempSubdirectory("heaveline-help-").FullName;
                    return Reads(streams, StudyTexts.OfBytes(texts), hash, folder, stop);
                }
                catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
                {
                    throw new RunFailedException(
                        $"The texts of the study cannot be kept here while this machine helps: {FileTrouble.Words(trouble)}",
                        $"Look whether there is room in '{Path.GetTempPath()}'.");
                }
            }
        }

        public void Dispose()
        {
            // A reading that is not over is waited for.
            lock (turn)
            {
                isOver = true;
                try
                {
                    if (folder is not null)
                    {
                        Directory.Delete(folder, recursive: true);
                    }
                }
                catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
                {
                    streams.Remarks.WriteLine(
                        $"heaveline: the texts of the study stay in '{folder}' and may be deleted: {FileTrouble.Words(trouble)}");
                }
            }
        }
    }
}
