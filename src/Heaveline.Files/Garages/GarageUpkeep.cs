using System.Text;
using Heaveline.Files.Cars;
using Heaveline.Files.Editing;

namespace Heaveline.Files.Garages;

/// <summary>
/// Renames, copies, takes out and puts back files of a garage. What is taken out lies among the earlier versions, byte for byte, until it is put
/// back. A file that others name is not renamed without them. Whatever hinders a step half-way is undone; a program that is killed half-way leaves
/// every text that there was, at most under both names.
/// </summary>
public sealed class GarageUpkeep
{
    private readonly Garage garage;
    private readonly GarageSaving saving;
    private readonly EarlierVersions earlier;
    private readonly TimeProvider time;

    internal GarageUpkeep(Garage garage, GarageSaving saving, EarlierVersions earlier, TimeProvider time)
    {
        this.garage = garage;
        this.saving = saving;
        this.earlier = earlier;
        this.time = time;
    }

    /// <summary>What is no longer in the garage and can be put back: the last version of each such file, the newest first.</summary>
    public IReadOnlyList<TakenOutFile> TakenOut => [.. earlier.OfGone().Take(TakenOutFile.Most).Select(version => TakenOutFile.Of(garage, version))];

    /// <summary>The files that name a file: variants of a car, drives with it, sheets of ties over a road.</summary>
    /// <param name="name">The file.</param>
    public IReadOnlyList<GarageReference> NamedBy(string name) => GarageReference.To(garage, garage.Names().Take(Garage.MostFiles), name);

    /// <summary>A file and all variants that cannot stand without it, each behind its base.</summary>
    /// <param name="name">The file.</param>
    public IReadOnlyList<string> WithVariants(string name)
    {
        var all = new List<string> { name };
        for (var n = 0; n < all.Count; n++)
        {
            all.AddRange(NamedBy(all[n]).Where(one => one.Kind == GarageKind.Variant && !all.Contains(one.File)).Select(one => one.File));
        }

        return all;
    }

    /// <summary>
    /// Gives a file another name, inside and on the disk, in its folder. Files that name it name the new one then; each of them is saved as ever,
    /// with the version before it kept. Its own earlier versions follow.
    /// </summary>
    /// <param name="name">The file.</param>
    /// <param name="title">What it is to be called inside; null: as it is.</param>
    /// <param name="to">Its new name; the old one where only the name inside changes.</param>
    /// <param name="read">The stamp of the text that its reader has seen.</param>
    public UpkeepOutcome Rename(string name, string? title, string to, Stamp read)
    {
        if (Untaken(name, title, to, isNew: to != name) is { } untaken)
        {
            return untaken;
        }

        return saving.Alone(() =>
        {
            var (outcome, path, bytes) = Seen(name, title, read);
            if (outcome is not null)
            {
                return outcome;
            }

            if (to != name)
            {
                return Move(name, path, to, bytes, read);
            }

            var saved = saving.SaveHeld(name, path, bytes, read);
            return saved.End == SaveEnd.Conflict ? Changed(name) : Of(saved);
        });
    }

    /// <summary>Puts a copy beside a file.</summary>
    /// <param name="name">The file.</param>
    /// <param name="title">What the copy is called inside.</param>
    /// <param name="to">The copy's name, in the same folder.</param>
    /// <param name="isNewCar">
    /// Whether it begins another car: each value says at the end of its line that it was not measured on that one. Else it is the same once more.
    /// </param>
    public UpkeepOutcome Copy(string name, string title, string to, bool isNewCar = false)
    {
        if (Untaken(name, title, to, isNew: true) is { } untaken)
        {
            return untaken;
        }

        var text = garage.Read(name);
        if (text.Text is null)
        {
            return Refused(SaveEnd.Conflict, text.Refusal!.Message, text.Refusal.Advice);
        }

        var copied = isNewCar ? NewCar.From(text.Text, title) : GarageFormat.Titled(text.Text, title);
        if (copied.Text is not { } copy)
        {
            return Of(copied.Refusal!);
        }

        var saved = garage.Save(to, copy, null);
        return saved.End == SaveEnd.Conflict ? Taken(to) : Of(saved);
    }

    /// <summary>Takes files out of the garage: each lies among the earlier versions then, as it was.</summary>
    /// <param name="files">The files with the stamps of what their reader has seen. All are taken out, or none.</param>
    public UpkeepOutcome TakeOut(IReadOnlyList<(string Name, Stamp Read)> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        return saving.Alone(() =>
        {
            // Whoever came meanwhile, a new variant above all, is not left without its base.
            var names = files.Select(file => file.Name).ToHashSet(StringComparer.Ordinal);
            var left = files.SelectMany(file => NamedBy(file.Name))
                .FirstOrDefault(one => one.Kind == GarageKind.Variant && !names.Contains(one.File));
            if (left is not null)
            {
                return Refused(
                    SaveEnd.Conflict,
                    $"the variant {left.Title} ({left.File}) would be left without the file that it changes.",
                    "Take it out too, or leave both.");
            }

            var now = time.GetUtcNow().UtcDateTime;
            var kept = new List<EarlierVersion>();
            try
            {
                // Variants first: none is without its base even for an instant.
                foreach (var (name, read) in files.Reverse())
                {
                    if (garage.Find(name).Path is not { } path || !File.Exists(path))
                    {
                        PutBack(kept);
                        return Gone(name);
                    }

                    saving.BeforeReplacing();
                    if (earlier.Take(name, path, read, now) is not { } version)
                    {
                        PutBack(kept);
                        return Changed(name);
                    }

                    kept.Add(version);
                }
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                PutBack(kept);
                throw;
            }

            kept.Reverse();
            return new UpkeepOutcome { End = SaveEnd.Saved, Kept = kept };
        });

        void PutBack(List<EarlierVersion> kept)
        {
            foreach (var version in Enumerable.Reverse(kept))
            {
                earlier.Bring(version, garage.Find(version.Name).Path!);
            }
        }
    }

    /// <summary>Puts files back that were taken out, byte for byte, where no other file has their name meanwhile.</summary>
    /// <param name="files">The files as they are kept, a base before its variants. All are put back, or none.</param>
    public UpkeepOutcome PutBack(IReadOnlyList<EarlierVersion> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        return saving.Alone(() =>
        {
            foreach (var version in files)
            {
                if (garage.Find(version.Name).Path is not { } path)
                {
                    return Refused(SaveEnd.NameRefused, $"{version.Name} is no name of this garage.", "Nothing was put back.");
                }

                if (!File.Exists(earlier.PathOf(version.Name, version.Until)))
                {
                    return Refused(SaveEnd.Conflict, $"{version.Name} is no longer kept, or is back already.", "Look at the list anew.");
                }

                if (File.Exists(path))
                {
                    return Refused(
                        SaveEnd.Conflict,
                        $"there is another file {version.Name} meanwhile.",
                        "Nothing was put back. Rename that file first; what was taken out stays among its earlier versions.");
                }
            }

            var back = new List<(EarlierVersion Version, string Path)>();
            try
            {
                foreach (var version in files)
                {
                    var path = garage.Find(version.Name).Path!;
                    earlier.Bring(version, path);
                    back.Add((version, path));
                }
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                foreach (var (version, path) in back)
                {
                    File.Move(path, earlier.PathOf(version.Name, version.Until), overwrite: false);
                }

                throw;
            }

            return new UpkeepOutcome { End = SaveEnd.Saved };
        });
    }

    private UpkeepOutcome Move(string name, string path, string to, byte[] bytes, Stamp read)
    {
        var followers = NamedBy(name).Select(one => (one.File, Text: garage.Read(one.File), one)).ToList();
        var saves = new List<(string File, string Path, byte[] Before, Stamp Stamp, byte[] After)>();
        foreach (var (file, text, reference) in followers)
        {
            var edited = GarageFormat.Edit(text.Text ?? "", KeyEdit.Put([reference.Key], reference.Renamed(to)));
            if (edited.Text is null || text.Stamp is not { } stamp)
            {
                return Refused(
                    SaveEnd.TextRefused,
                    $"{file} names it, and cannot be made to name it otherwise: {edited.Refusal?.Message ?? text.Refusal?.Message}",
                    edited.Refusal?.Advice ?? text.Refusal?.Advice ?? "");
            }

            saves.Add((file, garage.Find(file).Path!, Encoding.UTF8.GetBytes(text.Text!), stamp, Encoding.UTF8.GetBytes(edited.Text)));
        }

        var target = garage.Find(to).Path!;
        var undo = new Stack<Func<bool>>();
        try
        {
            if (!WholeFile.WriteNew(target, bytes))
            {
                return Taken(to);
            }

            undo.Push(() =>
            {
                var isOurs = Stamp.Of(File.ReadAllBytes(target)) == Stamp.Of(bytes);
                if (isOurs)
                {
                    File.Delete(target);
                }

                return isOurs;
            });
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(target, File.GetUnixFileMode(path));
            }

            foreach (var save in saves)
            {
                var saved = saving.SaveHeld(save.File, save.Path, save.After, save.Stamp);
                if (saved.End is not (SaveEnd.Saved or SaveEnd.Unchanged))
                {
                    return Back(save.File);
                }

                undo.Push(() => saving.SaveHeld(save.File, save.Path, save.Before, Stamp.Of(save.After)).End is SaveEnd.Saved or SaveEnd.Unchanged);
            }

            saving.BeforeReplacing();
            if (earlier.Take(name, path, read, time.GetUtcNow().UtcDateTime) is not { } last)
            {
                return Back(name);
            }

            // The text stands under its new name: only where the name inside changed is there a version before it.
            if (Stamp.Of(bytes) == read)
            {
                File.Delete(earlier.PathOf(name, last.Until));
            }

            earlier.Rename(name, to);
            return new UpkeepOutcome { End = SaveEnd.Saved, Followed = [.. saves.Select(save => save.File)] };
        }
        catch (Exception e) when ((e is IOException or UnauthorizedAccessException) && File.Exists(path))
        {
            Back(name);
            throw;
        }

        // What somebody else has changed in the very moment stays, and so does the file that it names.
        UpkeepOutcome Back(string changed)
        {
            while (undo.TryPop(out var step))
            {
                if (!step())
                {
                    return Refused(
                        SaveEnd.Conflict,
                        $"{changed} was changed by somebody else meanwhile, and so was what was renamed already.",
                        $"Both {name} and {to} stand in the garage now. Look at both and take one out.");
                }
            }

            return Changed(changed);
        }
    }

    // The bytes that a file would have under another title, if it is still the one that was read.
    private (UpkeepOutcome? Refused, string Path, byte[] Bytes) Seen(string name, string? title, Stamp read)
    {
        var text = garage.Read(name);
        if (text.Text is null)
        {
            var isThere = File.Exists(garage.Find(name).Path);
            return (isThere ? Refused(SaveEnd.Conflict, text.Refusal!.Message, text.Refusal.Advice) : Gone(name), "", []);
        }

        if (text.Stamp != read)
        {
            return (Changed(name), "", []);
        }

        var titled = title is null ? new EditOutcome(text.Text, [], null) : GarageFormat.Titled(text.Text, title);
        return titled.Text is { } words ? (null, garage.Find(name).Path!, Encoding.UTF8.GetBytes(words)) : (Of(titled.Refusal!), "", []);
    }

    private UpkeepOutcome? Untaken(string name, string? title, string to, bool isNew)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(to);
        if (title is not null && string.IsNullOrWhiteSpace(title))
        {
            return Refused(SaveEnd.NameRefused, "it would be called nothing.", "Give it a name.");
        }

        if (!isNew)
        {
            return null;
        }

        if (garage.Find(to).Refusal is { } refusal)
        {
            return Refused(SaveEnd.NameRefused, refusal.Message, refusal.Advice);
        }

        if (GarageChoices.Reserved(to) is { } reserved)
        {
            return Refused(SaveEnd.NameRefused, reserved, "");
        }

        if (Folder(to) != Folder(name))
        {
            return Refused(
                SaveEnd.NameRefused,
                "its file would lie in another folder.",
                "Keep it in its own: what it names is written as seen from there.");
        }

        // Small and capital letters are one on many systems.
        return garage.Names().FirstOrDefault(one => one.Equals(to, StringComparison.OrdinalIgnoreCase) && one != name) is { } there
            ? Taken(there)
            : null;
    }

    private static string Folder(string name) => name[..(name.LastIndexOf('/') + 1)];

    private static UpkeepOutcome Of(SaveOutcome saved) => new() { End = saved.End, Message = saved.Message, Advice = saved.Advice };

    private static UpkeepOutcome Of(EditRefusal refusal) => Refused(SaveEnd.TextRefused, refusal.Message, refusal.Advice);

    private static UpkeepOutcome Taken(string to) =>
        Refused(SaveEnd.Conflict, $"there is a file {to} already, and it is left as it is.", "Take another name.");

    private static UpkeepOutcome Gone(string name) =>
        Refused(SaveEnd.Conflict, $"{name} is gone from the disk since it was listed.", "Nothing was done. Look at the list anew.");

    private static UpkeepOutcome Changed(string name) => Refused(
        SaveEnd.Conflict, $"{name} was changed by somebody else meanwhile.", "Nothing was done. Look at it as it is now, then decide again.");

    private static UpkeepOutcome Refused(SaveEnd end, string message, string advice) => new() { End = end, Message = message, Advice = advice };
}
