// Inside the package: it sets a flag for the properties of the package.

package expr

import "flag"

// The properties take the same inputs in every run, so that a change is not stopped by what it
// did not cause. -rapid.seed=0 looks for new ones; .ci/fuzz does so for every property.
func init() { flag.Set("rapid.seed", "1") }
