using System.Text;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Garages;

/// <summary>Saves texts of one garage, one at a time.</summary>
/// <param name="folder">The garage's folder.</param>
/// <param name="earlier">Keeps what is saved over.</param>
/// <param name="time">The clock.</param>
internal sealed class GarageSaving(string folder, EarlierVersions earlier, TimeProvider time)
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Called just before a file takes its name.</summary>
    public Action BeforeReplacing { get; set; } = () => { };

    /// <summary>How long to wait for another save.</summary>
    public TimeSpan Patience { get; set; } = TimeSpan.FromSeconds(5);

    /// <summary>Saves a text; <see cref="Garage.Save"/> says how.</summary>
    public SaveOutcome Save(string name, string path, string text, Stamp? read)
    {
        var outcome = new SaveOutcome { End = SaveEnd.Saved, Name = name, Text = text };
        if (Refused(name, text) is { } refusal)
        {
            return outcome with { End = SaveEnd.TextRefused, Message = refusal.Message, Advice = refusal.Advice };
        }

        try
        {
            using var only = GarageLock.Take(folder, Patience);
            return only is null
                ? outcome with { End = SaveEnd.Busy, Message = "another program is saving in this garage.", Advice = "Try again in a moment." }
                : Save(outcome, path, Strict.GetBytes(text), read);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return outcome with
            {
                End = SaveEnd.NotWritten,
                Message = $"the file was not written: {FileTrouble.Words(e.InnerException ?? e)}",
                Advice = "The file is as it was. Check the disk and who may write to the folder, or copy the text elsewhere.",
            };
        }
    }

    /// <summary>Does something that must not meet another save, and says in words what hindered it.</summary>
    /// <param name="work">Called while nobody else saves in the garage.</param>
    public UpkeepOutcome Alone(Func<UpkeepOutcome> work)
    {
        try
        {
            using var only = GarageLock.Take(folder, Patience);
            return only is null
                ? new UpkeepOutcome { End = SaveEnd.Busy, Message = "another program is saving in this garage.", Advice = "Try again in a moment." }
                : work();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new UpkeepOutcome
            {
                End = SaveEnd.NotWritten,
                Message = $"the disk did not take it: {FileTrouble.Words(e.InnerException ?? e)}",
                Advice = "Nothing is lost. Check the disk and who may write to the folder, then try again.",
            };
        }
    }

    /// <summary>Saves bytes as <see cref="Save(string, string, string, Stamp?)"/> does, from within <see cref="Alone"/>.</summary>
    public SaveOutcome SaveHeld(string name, string path, byte[] bytes, Stamp? read) =>
        Save(new SaveOutcome { End = SaveEnd.Saved, Name = name, Text = Decoded(bytes) ?? "" }, path, bytes, read);

    /// <summary>What a save would meet; <see cref="Garage.Met"/> says how.</summary>
    public static SaveOutcome? Met(string name, string path, string text, Stamp? read)
    {
        var outcome = new SaveOutcome { End = SaveEnd.Unchanged, Name = name, Text = text };
        try
        {
            var present = Present(path);
            return StampOf(present) == read ? null : Conflict(outcome, present);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return outcome with
            {
                End = SaveEnd.NotWritten,
                Message = $"the file cannot be looked at: {FileTrouble.Words(e.InnerException ?? e)}",
                Advice = "What stands here is as it was read.",
            };
        }
    }

    private SaveOutcome Save(SaveOutcome outcome, string path, byte[] bytes, Stamp? read)
    {
        Sweep(outcome.Name, path);
        var present = Present(path);
        if (StampOf(present) != read)
        {
            return Conflict(outcome, present);
        }

        var stamp = Stamp.Of(bytes);
        if (stamp == read)
        {
            return outcome with { End = SaveEnd.Unchanged, Stamp = stamp };
        }

        if (present is not null)
        {
            var (version, dropped) = earlier.Keep(outcome.Name, present, time.GetUtcNow().UtcDateTime);
            outcome = outcome with { Earlier = version, Dropped = dropped };
        }
        else if (!outcome.Name.StartsWith(DriveFolders.Folder + "/", StringComparison.Ordinal))
        {
            // What is written down about a drive is its own, whenever it is written.
            earlier.MakeWay(outcome.Name, outcome.Text);
        }

        bool IsStillTheSame()
        {
            BeforeReplacing();
            return StampOf(Present(path)) == read;
        }

        return WholeFile.Write(path, stream => stream.Write(bytes), IsStillTheSame, replaces: present is not null)
            ? outcome with { Stamp = stamp }
            : Conflict(outcome, Present(path));
    }

    // What programs left that were killed while they saved: here, under the lock, nobody else is saving.
    private void Sweep(string name, string path)
    {
        var now = time.GetUtcNow().UtcDateTime;
        PartialFile.Sweep(Path.GetDirectoryName(path)!, GarageFormat.Has, now);
        earlier.Sweep(name, now);
    }

    private static SaveOutcome Conflict(SaveOutcome outcome, byte[]? present) => outcome with
    {
        End = SaveEnd.Conflict,
        Message = present is null
            ? "the file is gone since it was read."
            : "the file on the disk is not the one that was read; somebody changed it meanwhile.",
        Advice = present is null
            ? "Save it as a new file, or leave it gone."
            : "Compare both texts, then save with the stamp of the one on the disk, or under another name.",
        Stamp = StampOf(present),
        TextOnDisk = present is null ? null : Decoded(present),
    };

    private static byte[]? Present(string path) => File.Exists(path) ? Bounded.Read(path, YamlTree.Longest) : null;

    private static Stamp? StampOf(byte[]? bytes) => bytes is null ? null : Stamp.Of(bytes);

    private static string? Decoded(byte[] bytes)
    {
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    // Texts that would be refused as a whole when read again, or that are none of the kinds a garage holds.
    private static Refusal? Refused(string name, string text)
    {
        var source = new SourceText(name, text);
        if (Encoding.UTF8.GetByteCount(text) > YamlTree.Longest)
        {
            return new Refusal(name, 1, 1, 1, $"the text has more than {YamlTree.Longest} bytes.", "Put measured data into files of their own.");
        }

        var reading = YamlReading.Value(source);
        return reading.Root is null ? reading.Refusals[0]
            : GarageFormat.Of(reading.Root) is null
                ? new Refusal(name, 1, 1, 1, "the text is no car, no variant and no road.", "Begin with car:, variant: or road:.")
            : null;
    }
}
