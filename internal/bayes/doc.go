// Package bayes weighs a list of hypotheses against pieces of evidence that are
// not quite independent of each other. It knows nothing of what the hypotheses mean.
//
// In go prior odds, for each variable a table of how often each of its states is
// met under each hypothesis, and what was observed: a state, or weights over the
// states when the observer was not sure. Out come the posterior, the shift each
// observation made, and how many bits the observation of a further variable
// would be worth.
//
// Two guards against overconfidence are part of the rule and not options bolted
// on: variables that tell the same story form a group, of which only the
// strongest member counts in full (see [Model.Weights]); and the whole
// log-likelihood is tempered before it meets the prior (see [Model.Posterior]).
//
// It leaves out structure learning, continuous variables and any dependence
// between variables other than these groups.
//
// Most callers need [New], [Model.Observe], [Model.Posterior] and
// [Model.Information].
package bayes
