using Heaveline.Cars;
using Heaveline.Drives;
using Heaveline.Films;
using Heaveline.Parts;
using Heaveline.Roads;
using Heaveline.Ties;

namespace Heaveline.Studies;

/// <summary>Turns names into cars, roads and logs: paths of files at a command line, names in a garage on a page.</summary>
public interface IFinder
{
    /// <summary>The car of a name.</summary>
    Found<Car> Car(string name);

    /// <summary>The road of a name.</summary>
    Found<Road> Road(string name);

    /// <summary>The log that files, folders and archives hold together. Where logs are not looked for, none is found.</summary>
    /// <param name="names">Their names.</param>
    Found<Log> Log(IReadOnlyList<string> names) => new() { Name = string.Join(", ", names), Refusal = "Logs of a drive are not read here." };

    /// <summary>The same log with decisions of the reading that are taken otherwise.</summary>
    /// <param name="names">Their names.</param>
    /// <param name="overrulings">What is taken otherwise.</param>
    Found<Log> Log(IReadOnlyList<string> names, IReadOnlyList<Overruling> overrulings) => Log(names);

    /// <summary>
    /// The drive of a name, its log unread: one of a garage, with what was written down about it, or a log alone. Where drives are not looked for,
    /// none is found.
    /// </summary>
    Found<RecordedDrive> Drive(string name) => new() { Name = name, Refusal = "Drives are not looked for here." };

    /// <summary>Whether a name leads to a drive that somebody wrote down what is known of, with its log.</summary>
    /// <param name="name">The name.</param>
    bool IsDescribed(string name) => false;

    /// <summary>
    /// The film of a name: its sheet with its kept track, or a track or a film with the sheet that says its marks. Where films are not looked for,
    /// none is found.
    /// </summary>
    /// <param name="name">The name.</param>
    /// <param name="marks">Name of the sheet of marks; null: the film's own.</param>
    Found<KeptFilm> Film(string name, string? marks) => new() { Name = name, Refusal = "Films are not read here." };

    /// <summary>The kept brightness of a headlamp of a name, or the film of one. Where lamps are not looked for, none is found.</summary>
    /// <param name="name">The name.</param>
    /// <param name="mark">Where the lamp is in a film; null: nothing was said.</param>
    Found<LampTrack> Lamp(string name, LampMark? mark) => new() { Name = name, Refusal = "Lamps are not read here." };

    /// <summary>The sheet of cable ties of a name. Where sheets are not looked for, none is found.</summary>
    Found<TieSheet> Ties(string name) => new() { Name = name, Refusal = "Sheets of cable ties are not read here." };

    /// <summary>The list of parts of a name. Where lists are not looked for, none is found.</summary>
    Found<PartsList> Parts(string name) => new() { Name = name, Refusal = "Lists of parts are not read here." };

    /// <summary>Whether a name leads to the file of a study, which asks for a choice of parts.</summary>
    /// <param name="name">The name.</param>
    bool IsStudy(string name) => false;

    /// <summary>The study of a name. Where studies are not looked for, none is found.</summary>
    Found<ChooseSheet> Study(string name) => new() { Name = name, Refusal = "Studies are not read here." };

    /// <summary>Ends what takes long already while a question is read.</summary>
    CancellationToken Stop => CancellationToken.None;

    /// <summary>The roads that have a short name, with what they are.</summary>
    IReadOnlyList<(string Name, string Caption)> Roads => [];
}
