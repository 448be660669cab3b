using Heaveline.Models;

namespace Heaveline.Recording;

/// <summary>Numbers that are made of a crossing's samples, for whoever moves a live car's sliders.</summary>
internal interface ILiveNumbers
{
    /// <summary>What is read off every sample, the same in number and order for every place of the sliders.</summary>
    IReadOnlyList<RecordSignal> SignalsOf(RideModel model);

    /// <summary>Notes what becomes of them in the record that this thread writes.</summary>
    /// <param name="model">The car; how it stands is given from outside.</param>
    /// <param name="answers">Where the answers to its questions stand among what is given, two a question.</param>
    LiveNumbers Note(RideModel model, int answers);
}
