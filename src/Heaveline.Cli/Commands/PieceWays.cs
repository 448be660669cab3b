using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files.Keeping;
using Heaveline.Pieces;

namespace Heaveline.Cli.Commands;

/// <summary>The options of a study whose work comes in pieces: where they are kept, and who helps.</summary>
internal sealed class PieceWays
{
    private readonly Option<string?> keep = KeptRun.Keep();
    private readonly Option<bool> resume = KeptRun.Resume();
    private readonly Option<string?> helpAt = new("--help-at")
    {
        Description = "Let other machines help, by 'heaveline help-out' with the code that is printed: they find the study at this port of this "
            + "machine, or at this port of one of its addresses, which opens it to the network there.",
        HelpName = "[ADDRESS:]PORT",
    };

    private readonly Option<string?> members = Members();
    private readonly Option<string?> crew = new("--crew")
    {
        Description = "Let the machines help that stand by for the crew of this file, by 'heaveline stand-by' with the same file. Without --help-at "
            + "the study listens where the crew's database reaches this machine.",
        HelpName = "FILE",
    };

    /// <summary>All of them, in the order of the help.</summary>
    public IReadOnlyList<Option> All => [keep, resume, helpAt, members, crew];

    /// <summary>Where machines are noted.</summary>
    public static Option<string?> Members() => new("--members")
    {
        Description =
            "Note the machines that help in a database: \"redis HOST:PORT\", \"postgres Host=…;Database=…\". Left out: at that of the study. "
            + "A password is given in the variable REDISCLI_AUTH or PGPASSWORD, not here.",
        HelpName = "DATABASE",
    };

    /// <summary>What was given; null for nothing.</summary>
    public Given? Of(ParseResult result)
    {
        var given = new Given(
            result.GetValue(keep), result.GetValue(resume), result.GetValue(helpAt), result.GetValue(members), result.GetValue(crew));
        if (given is { Folder: null, Resumes: true })
        {
            throw new Stopped("heaveline: --resume goes on from what --kept-in has kept: give that too, or leave it out.", ExitCode.WrongUsage);
        }

        if (given is { HelpAt: null, Members: not null })
        {
            throw new Stopped(
                "heaveline: --members notes the machines that --help-at lets help: give that too, or leave it out.", ExitCode.WrongUsage);
        }

        if (given is { Crew: not null, Members: not null })
        {
            throw new Stopped("heaveline: --crew says in its file where machines are noted: give it, or --members, not both.", ExitCode.WrongUsage);
        }

        return given is { Folder: null, HelpAt: null, Crew: null } ? null : given;
    }

    /// <summary>What was given.</summary>
    /// <param name="Folder">Where pieces are kept.</param>
    /// <param name="Resumes">Whether those of before are taken up.</param>
    /// <param name="HelpAt">Where others find the study.</param>
    /// <param name="Members">Where they are noted.</param>
    /// <param name="Crew">The file of the crew that helps.</param>
    internal sealed record Given(string? Folder, bool Resumes, string? HelpAt, string? Members, string? Crew)
    {
        /// <summary>On what the passes run: another processor rounds otherwise, and a piece is the same whoever does it.</summary>
        /// <param name="on">What was asked for.</param>
        public string On(string? on) => on is null or ComputedOn.Cpu
            ? ComputedOn.Cpu
            : throw new Stopped(
                "heaveline: --on gpu: pieces are worked out by the processor, to the bit. Leave out --on gpu, or "
                + $"{(Folder is not null ? "--kept-in" : HelpAt is not null ? "--help-at" : "--crew")}.",
                ExitCode.WrongUsage);

        /// <summary>Leaves the command to the program that can let others help, where this one cannot.</summary>
        public void Leave(Streams streams)
        {
            if (HelpAt is not null || Crew is not null)
            {
                Helping.Leave(streams);
            }
        }

        /// <summary>Opens what was asked for.</summary>
        public IPieceRun Open(Streams streams, StudyTexts study, CancellationToken stop)
        {
            var kept = Folder is null ? null : KeptRun.Open(streams, Folder, Resumes, study);
            try
            {
                return HelpAt is null && Crew is null
                    ? kept!
                    : new Both(kept, Helping.Open(streams, this, study, pieces => kept?.Withdraw(pieces), stop));
            }
            catch
            {
                kept?.Dispose();
                throw;
            }
        }
    }

    // What is kept is looked up before anybody is asked.
    private sealed class Both(KeptRun? kept, IPieceRun helped) : IPieceRun
    {
        public int PiecesAtOnce => helped.PiecesAtOnce;

        public IPieceDoer Through(IPieceDoer doer) => kept is null ? helped.Through(doer) : kept.Through(helped.Through(doer));

        public void Say()
        {
            helped.Say();
            kept?.Say();
        }

        public void Dispose()
        {
            helped.Dispose();
            kept?.Dispose();
        }
    }
}
