using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files.Keeping;

namespace Heaveline.Cli.Commands;

/// <summary>The options of a study whose work comes in pieces: where they are kept.</summary>
internal sealed class PieceWays
{
    private readonly Option<string?> keep = KeptRun.Keep();
    private readonly Option<bool> resume = KeptRun.Resume();

    /// <summary>All of them, in the order of the help.</summary>
    public IReadOnlyList<Option> All => [keep, resume];

    /// <summary>What was given; null for nothing.</summary>
    public Given? Of(ParseResult result)
    {
        var (folder, resumes) = (result.GetValue(keep), result.GetValue(resume));
        if (folder is null && resumes)
        {
            throw new Stopped("heaveline: --resume goes on from what --kept-in has kept: give that too, or leave it out.", ExitCode.WrongUsage);
        }

        return folder is null ? null : new Given(folder, resumes);
    }

    /// <summary>What was given.</summary>
    /// <param name="Folder">Where pieces are kept.</param>
    /// <param name="Resumes">Whether those of before are taken up.</param>
    internal sealed record Given(string Folder, bool Resumes)
    {
        /// <summary>On what the passes run: another processor rounds otherwise, and a piece is the same whoever does it.</summary>
        /// <param name="on">What was asked for.</param>
        public string On(string? on) => on is null or ComputedOn.Cpu
            ? ComputedOn.Cpu
            : throw new Stopped(
                "heaveline: --on gpu: what is kept is worked out by the processor, to the bit. Leave out --on gpu, or --kept-in.", ExitCode.WrongUsage);

        /// <summary>Opens what was asked for.</summary>
        public KeptRun Open(Streams streams, Func<StudyTexts> study) => KeptRun.Open(streams, Folder, Resumes, study());
    }
}
