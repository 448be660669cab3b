using System.Text;

namespace Heaveline.Cli.Output;

/// <summary>Where a command writes: results, and what is said beside them. Tests hand in their own.</summary>
internal sealed class Streams(TextWriter results, TextWriter remarks, bool interactive)
{
    private int stopped;

    public TextWriter Results { get; } = new PlainWriter(results);

    public TextWriter Remarks { get; } = new PlainWriter(remarks);

    /// <summary>Progress is shown only to a person at a terminal.</summary>
    public bool Interactive { get; } = interactive;

    /// <summary>What is said when the command is stopped before its end.</summary>
    public string StoppedWords { get; set; } = "heaveline: stopped by you; nothing was written.";

    /// <summary>How long a command that was stopped may take to its end.</summary>
    public TimeSpan Grace { get; set; } = TimeSpan.FromSeconds(2);

    /// <summary>Says that the command was stopped: once, however often that is asked.</summary>
    public void SayStopped()
    {
        if (Interlocked.Exchange(ref stopped, 1) == 0)
        {
            Remarks.WriteLine(StoppedWords);
        }
    }

    /// <summary>Writes a file to where results go, after what was said there.</summary>
    public void WriteFile(byte[] bytes)
    {
        Results.Flush();
        if (results is StreamWriter { BaseStream: var stream })
        {
            stream.Write(bytes);
            stream.Flush();
        }
        else
        {
            results.Write(Encoding.UTF8.GetString(bytes));
        }
    }

    /// <summary>Whether pictures are to fit one column of a page instead of its width.</summary>
    public bool Column { get; set; }
}
